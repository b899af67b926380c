import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import type { TallyLine } from '../../../server/core/model/snapshot.js';
import { trueTotals } from '../../../server/core/score/total-score.js';
import {
  DEFAULT_OPTIONS,
  WITHOUT_ERRORS,
  type SimulationOptions,
} from '../../../server/core/simulate/options.js';
import { simulate, type SimulatedCount } from '../../../server/core/simulate/simulate.js';

/*
 * What makes the same birds stand in several sections, and what the truth says of it: movement,
 * flocks that split or join, observers who tally past the line, totals instead of flocks.
 */
const simulated = (more: Partial<SimulationOptions>): SimulatedCount =>
  simulate({ ...DEFAULT_OPTIONS, birds: 800, ...more }, defaultProtocol);

const anyMixture = fc.record({
  seed: fc.nat(),
  moving: fc.constantFrom(0, 0.3, 1),
  splitting: fc.constantFrom(0, 0.5, 1),
  pastTheLine: fc.constantFrom(0, 0.5, 1),
  lumping: fc.constantFrom(0, 0.5, 1),
  merged: fc.constantFrom(0, 0.5),
  parties: fc.constantFrom(0, 0.5),
});

const numberOf = ({ quantity }: TallyLine): number =>
  quantity.kind === 'exact' ? quantity.number : NaN;

const onWater = ({ snapshot }: SimulatedCount): TallyLine[] =>
  snapshot.tallies.flatMap(({ lines }) => lines.filter(({ activity }) => activity === 'water'));

const partsOf = ({ truth }: SimulatedCount) => (truth.flocks ?? []).flatMap(({ parts }) => parts);

describe('the true flocks', () => {
  it('hold every bird once, and every line holds all the birds that the truth puts in it', () => {
    fc.assert(
      fc.property(anyMixture, (mixture) => {
        const count = simulated({ ...WITHOUT_ERRORS, ...mixture });
        const parts = partsOf(count);
        expect(parts.reduce((sum, { birds }) => sum + birds, 0)).toBe(800);
        const birdsIn = new Map<string, number>();
        for (const { birds, lines } of parts) {
          for (const line of lines) birdsIn.set(line, (birdsIn.get(line) ?? 0) + birds);
        }
        for (const line of onWater(count)) expect(numberOf(line)).toBe(birdsIn.get(line.id));
        expect(birdsIn.size).toBe(onWater(count).length);
      }),
      { numRuns: 100 },
    );
  });

  it('are what the links are about: two lines of different sections that share a flock', () => {
    fc.assert(
      fc.property(anyMixture, (mixture) => {
        const { snapshot, truth } = simulated(mixture);
        const sectionsOf = new Map(
          snapshot.tallies.flatMap(({ lines, sections }) =>
            lines.map(({ id }) => [id, sections] as const),
          ),
        );
        const apart = (one: string, other: string): boolean =>
          !(sectionsOf.get(one) ?? []).some((id) => sectionsOf.get(other)?.includes(id));
        const expected = new Set(
          (truth.flocks ?? []).flatMap(({ parts }) => {
            const lines = [...new Set(parts.flatMap((part) => part.lines))].sort();
            return lines.flatMap((one, index) =>
              lines
                .slice(index + 1)
                .filter((other) => apart(one, other))
                .map((other) => `${one} ${other}`),
            );
          }),
        );
        const links = truth.links.map(({ lines }) => lines.join(' '));
        expect(new Set(links)).toEqual(expected);
        expect(links).toHaveLength(expected.size);
      }),
      { numRuns: 100 },
    );
  });

  it('were in sight, or recorded, or neither: both truths are at most all birds', () => {
    fc.assert(
      fc.property(anyMixture, (mixture) => {
        const still = simulated({ ...WITHOUT_ERRORS, ...mixture, moving: 0 });
        expect(trueTotals(still.truth.flocks ?? [])).toEqual({ inSight: 800, recorded: 800 });
        const { inSight, recorded } = trueTotals(simulated(mixture).truth.flocks ?? []);
        expect(Math.max(inSight, recorded)).toBeLessThanOrEqual(800);
      }),
      { numRuns: 40 },
    );
  });
});

describe('observers who tally past the line', () => {
  const none = { ...WITHOUT_ERRORS, moving: 0, merged: 0, parties: 0 };

  it('have every flock in view, of which a still lake makes overlaps only', () => {
    fc.assert(
      fc.property(fc.nat(), (seed) => {
        const [within, past] = [0, 1].map((pastTheLine) =>
          simulated({ ...none, seed, pastTheLine }),
        );
        expect(within?.truth.links).toEqual([]);
        expect(past?.truth.sections).toEqual(within?.truth.sections);
        expect(past?.truth.toBeSeen).toEqual(within?.truth.toBeSeen);
        expect(past?.truth.links.every(({ kind }) => kind === 'overlap')).toBe(true);
        for (const [tally, own] of Object.entries(within?.truth.found ?? {})) {
          const more = past?.truth.found?.[tally] ?? {};
          for (const [species, birds] of Object.entries(own)) {
            expect(more[species]).toBeGreaterThanOrEqual(birds);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('count about so many birds twice as lie within 400 m of a line: 0.8 km of every 2', () => {
    // By the lake's geometry: 3 lines of 4 sections, 0.8 km each, of 8 km: 30 % more birds.
    let [all, counted] = [0, 0];
    for (let seed = 1; seed <= 60; seed += 1) {
      const count = simulated({ ...none, seed, pastTheLine: 1, birds: 3000 });
      const first = count.snapshot.tallies.filter(({ observer }) => /o[13]$/u.test(observer));
      all += 3000;
      counted += first
        .flatMap(({ lines }) => lines)
        .reduce((sum, line) => sum + (line.activity === 'water' ? numberOf(line) : 0), 0);
    }
    expect(counted / all).toBeGreaterThan(1.26);
    expect(counted / all).toBeLessThan(1.34);
  });
});

describe('flocks that split or join', () => {
  it('are the same flocks where nothing moves', () => {
    const [plain, split] = [0, 1].map((splitting) => simulated({ moving: 0, splitting }));
    expect(split).toEqual(plain);
  });

  it('leave from 20 to 80 % of their birds where they were', () => {
    let split = 0;
    for (let seed = 1; seed <= 30; seed += 1) {
      const [plain, parted] = [0, 1].map((splitting) =>
        simulated({ ...WITHOUT_ERRORS, seed, moving: 1, splitting }),
      );
      const before = plain?.truth.flocks ?? [];
      const after = parted?.truth.flocks ?? [];
      const birdsOf = (flock: (typeof after)[number] | undefined): number =>
        (flock?.parts ?? []).reduce((sum, { birds }) => sum + birds, 0);
      before.forEach((flock, index) => {
        const all = birdsOf(flock);
        const left = all - birdsOf(after[index]);
        if (left === 0) return;
        split += 1;
        expect(left).toBeGreaterThanOrEqual(Math.floor(0.2 * all));
        expect(left).toBeLessThanOrEqual(Math.ceil(0.8 * all));
      });
    }
    expect(split).toBeGreaterThan(100);
  });

  it('make lines that hold two flocks, and links of a part of a line', () => {
    let [joint, inPart] = [0, 0];
    for (let seed = 1; seed <= 20; seed += 1) {
      const { truth } = simulated({ ...WITHOUT_ERRORS, seed, moving: 0.5, splitting: 1 });
      const flocksIn = new Map<string, number>();
      for (const { parts } of truth.flocks ?? []) {
        for (const line of new Set(parts.flatMap(({ lines }) => lines))) {
          flocksIn.set(line, (flocksIn.get(line) ?? 0) + 1);
        }
      }
      joint += [...flocksIn.values()].filter((flocks) => flocks > 1).length;
      inPart += truth.links.filter(({ lines: [one, other] }) => {
        const [a, b] = [flocksIn.get(one) ?? 0, flocksIn.get(other) ?? 0];
        return a > 1 !== b > 1;
      }).length;
    }
    expect(joint).toBeGreaterThan(50);
    expect(inPart).toBeGreaterThan(20);
  });
});

describe('totals instead of flocks', () => {
  it('are one line a taxon, without time, position or label', () => {
    fc.assert(
      fc.property(anyMixture, (mixture) => {
        const { snapshot, truth } = simulated({ ...mixture, slips: 0.2, lumping: 1 });
        for (const { lines } of snapshot.tallies) {
          const totals = lines.filter(({ activity }) => activity === 'water');
          const taxa = totals.map(({ candidates }) => candidates.join('|'));
          expect(new Set(taxa).size).toBe(taxa.length);
          for (const { time, position, flock, heading, to } of totals) {
            expect([time, position, flock, heading, to]).toEqual([null, null, null, null, null]);
          }
        }
        expect((truth.planted ?? []).filter(({ kind }) => kind === 'slip')).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it('are of the birds that the same observers find flock by flock', () => {
    const [flocks, totals] = [0, 1].map((lumping) => simulated({ lumping, seed: 5 }));
    expect(totals?.truth.found).toEqual(flocks?.truth.found);
    expect(totals?.truth.sections).toEqual(flocks?.truth.sections);
  });
});
