import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import type { Link, Sighting } from '../../../server/core/model/result.js';
import { judgeLinks, type JudgedTrueLink } from '../../../server/core/score/judge-links.js';
import { scoreLinks } from '../../../server/core/score/link-score.js';
import { DEFAULT_OPTIONS } from '../../../server/core/simulate/options.js';
import { simulate } from '../../../server/core/simulate/simulate.js';

/* Links made from the truth itself, and links that the truth speaks against. */
const anyCount = fc
  .record({
    seed: fc.nat(),
    moving: fc.constantFrom(0.15, 1),
    pastTheLine: fc.constantFrom(0, 0.5, 1),
    splitting: fc.constantFrom(0, 1),
    lumping: fc.constantFrom(0, 0.4),
    merged: fc.constantFrom(0, 0.5),
  })
  .map((options) => simulate({ ...DEFAULT_OPTIONS, birds: 800, ...options }, defaultProtocol));

const sighting = (lines: readonly string[], number: number): Sighting => ({
  cell: '',
  section: '',
  lines,
  observers: [],
  taxon: '',
  candidates: [],
  number,
  start: null,
  end: null,
  position: null,
});

const linkOf = (one: readonly string[], other: readonly string[], birds: number): Link => ({
  id: `${one.join('+')}~${other.join('+')}`,
  kind: 'movement',
  lines: [...one, ...other],
  first: sighting(one, birds),
  second: sighting(other, birds),
  probability: 0.95,
  birds,
  proposed: true,
  deducted: false,
  deduction: [],
  ruling: null,
  evidence: [],
});

const linkFrom = ({ lines: [one, other], birds }: JudgedTrueLink): Link =>
  linkOf(one, other, birds);

describe('links judged against a simulated truth', () => {
  it('are all right, and find all, if they are the true ones', () => {
    let links = 0;
    fc.assert(
      fc.property(anyCount, ({ snapshot, truth }) => {
        const { trueLinks } = judgeLinks([], truth, snapshot);
        const judged = scoreLinks(judgeLinks(trueLinks.map(linkFrom), truth, snapshot));
        links += judged.trueLinks;
        expect(judged).toMatchObject({
          trueLinks: trueLinks.length,
          shownRight: trueLinks.length,
          proposedFound: trueLinks.length,
          birdsFound: judged.trueBirds,
        });
        for (const kind of ['overlap', 'movement'] as const) {
          const own = trueLinks.filter((each) => each.kind === kind).length;
          expect(judged.byKind[kind].trueLinks).toBe(own);
        }
      }),
      { numRuns: 60 },
    );
    // Enough of them that the property was tested at all, whatever seeds were drawn.
    expect(links).toBeGreaterThan(50);
  });

  it('are no more than the further places of every flock', () => {
    fc.assert(
      fc.property(anyCount, ({ snapshot, truth }) => {
        const sectionsOf = new Map(
          snapshot.tallies.flatMap(({ lines, sections }) =>
            lines.map(({ id }) => [id, sections.join('+')] as const),
          ),
        );
        const further = (truth.flocks ?? []).map(({ parts }) => {
          const places = parts.flatMap(({ lines }) => lines.map((id) => sectionsOf.get(id)));
          return Math.max(0, new Set(places).size - 1);
        });
        const { trueLinks } = judgeLinks([], truth, snapshot);
        expect(trueLinks.length).toBeLessThanOrEqual(further.reduce((sum, each) => sum + each, 0));
        // Without birds in both places there is nothing to find.
        for (const { birds } of trueLinks) expect(birds).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it('are all wrong between lines that share no birds', () => {
    let wrong = 0;
    fc.assert(
      fc.property(anyCount, ({ snapshot, truth }) => {
        const parts = (truth.flocks ?? []).map((flock) =>
          flock.parts.flatMap(({ lines }) => lines),
        );
        const recorded = parts.filter((lines) => lines.length > 0);
        const links = recorded.slice(1).flatMap((lines, index) => {
          const before = recorded[index] ?? [];
          const [one = '', other = ''] = [lines[0], before[0]];
          const shared = parts.some((some) => some.includes(one) && some.includes(other));
          return shared ? [] : [linkOf([one], [other], 5)];
        });
        wrong += links.length;
        const judged = scoreLinks(judgeLinks(links, truth, snapshot));
        expect(judged).toMatchObject({ shownRight: 0, shownPartly: 0, shownFound: 0 });
        expect(judged.birdsWrong).toBe(5 * links.length);
      }),
      { numRuns: 60 },
    );
    expect(wrong).toBeGreaterThan(50);
  });
});
