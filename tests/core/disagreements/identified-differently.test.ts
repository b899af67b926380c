import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Disagreement, Result } from '../../../server/core/model/result.js';
import type { Ruling } from '../../../server/core/model/ruling.js';
import type { Tally } from '../../../server/core/model/snapshot.js';
import { aCount, aProtocol, aTally, type ShortLine } from '../a-count.js';
import { randomProtocol } from '../random-count.js';
import { reconcileInEnglish as reconcile } from '../../support/reconcile-in-english.js';

/*
 * Counts worked by hand; no outside source. What is one flock is told by its labels' records: number,
 * kinds, time and place.
 */

const [GREATER, LESSER, PAIR, REDHEAD] = [
  'Aythya marila',
  'Aythya affinis',
  'Aythya affinis/marila',
  'Aythya americana',
];
/** Two places of section s1, two kilometres from each other. */
const [NORTH, SOUTH] = [
  [-79.01, 44.019],
  [-79.01, 44.001],
] as const;

const raft = (
  flock: string | null,
  position: readonly [number, number],
  lines: readonly (readonly [taxon: string, number: number])[],
): ShortLine[] =>
  lines.map(([taxon, number]) => [
    taxon,
    number,
    { flock, position, time: '2027-01-16T09:00:00-05:00' },
  ]);

const protocol = aProtocol({ rule: 'mean' });

const reconciled = (...tallies: Tally[]): Result<string> =>
  reconcile(aCount(tallies), [], protocol);

const namedApart = ({ disagreements }: Result<string>): Disagreement<string>[] =>
  disagreements.filter(({ kind }) => kind === 'identified-differently');

describe('identified differently, flock by flock', () => {
  // The whole cell pairs all of the 60 Greater of the one raft with the pair of the other.
  const hidden = [
    aTally('o1', [
      ...raft('near', NORTH, [[GREATER, 60]]),
      ...raft('far', SOUTH, [
        [PAIR, 300],
        [REDHEAD, 90],
      ]),
    ]),
    aTally('o2', [
      ...raft('1', NORTH, [[LESSER, 60]]),
      ...raft('2', SOUTH, [
        [GREATER, 200],
        [LESSER, 100],
        [REDHEAD, 90],
      ]),
    ]),
  ];

  it('finds what birds of another flock make up for in the balance of the whole cell', () => {
    const result = reconciled(...hidden);
    const pairing = result.cells[0]?.pairings[0];
    expect(pairing).toMatchObject({ agreed: 150, compatible: 300, differently: 0 });
    const [found, ...more] = namedApart(result);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      severity: 'questioned',
      birds: 60,
      observers: ['o1', 'o2'],
      lines: ['t-o1:1', 't-o2:1'],
    });
    expect(found?.text).toBe(
      "In North arm o1's “near” (60 birds) and o2's “1” (60) are taken for one flock: o1 called " +
        '60 birds Greater Scaup that o2 called Lesser Scaup.',
    );
  });

  it("proposes either observer's names, the number and the other flock unchanged", () => {
    const [found] = namedApart(reconciled(...hidden));
    const linesOf = (text: string): unknown =>
      found?.proposals
        .filter((proposal) => proposal.text.startsWith(text))
        .map(({ decision }) =>
          decision.kind === 'set-numbers'
            ? decision.lines.map(({ candidates, number }) => [candidates.join('/'), number])
            : null,
        );
    expect(linesOf('Take o1')).toEqual([
      [
        ['Aythya affinis', 100],
        ['Aythya marila', 260],
      ],
    ]);
    expect(linesOf('Take o2')).toEqual([
      [
        ['Aythya affinis', 160],
        ['Aythya marila', 200],
      ],
    ]);
  });

  it('does not hold flocks against each other that are two: there the balance alone is at odds', () => {
    const [noted, ...more] = namedApart(
      reconciled(
        aTally('o1', [
          ...raft('a', NORTH, [[PAIR, 60]]),
          ...raft('b', SOUTH, [
            [GREATER, 150],
            [REDHEAD, 30],
          ]),
        ]),
        aTally('o2', [
          ...raft('1', NORTH, [[LESSER, 60]]),
          ...raft('2', SOUTH, [
            [PAIR, 150],
            [REDHEAD, 30],
          ]),
        ]),
      ),
    );
    expect(more).toEqual([]);
    // Pair with pair are 60, then the pair's other 90 with Greater: 60 Greater are left for 60 Lesser.
    expect(noted).toMatchObject({ severity: 'note', birds: 60 });
    expect(noted?.text).toMatch(/flock by flock their names agree within counting error\.$/u);
    expect(noted?.proposals.map(({ text }) => text).at(-1)).toBe(
      'Name the birds flock by flock: 60 Lesser Scaup and 150 Greater Scaup',
    );
  });

  it('takes counts of one mixed flock within 5 % error for honest: 420 and 380, 385 and 410', () => {
    const records = (greater: number, lesser: number) =>
      raft('raft', NORTH, [
        [GREATER, greater],
        [LESSER, lesser],
      ]);
    const within = reconciled(aTally('o1', records(420, 380)), aTally('o2', records(385, 410)));
    expect(within.cells[0]?.pairings[0]?.differently).toBe(30);
    expect(namedApart(within).map(({ severity }) => severity)).toEqual(['note']);
    // 80 birds are 2.8 standard deviations of 420 and 340.
    const beyond = reconciled(aTally('o1', records(420, 340)), aTally('o2', records(340, 420)));
    expect(namedApart(beyond)).toMatchObject([{ birds: 80, severity: 'questioned' }]);
  });

  it('sees birds that the error of a larger number beside them hides', () => {
    // 82 against 109 Greater are 4 standard deviations; 228 and 227 Lesser may well be 27 apart.
    const found = namedApart(
      reconciled(
        aTally(
          'o1',
          raft('a', NORTH, [
            [GREATER, 82],
            [LESSER, 228],
          ]),
        ),
        aTally(
          'o2',
          raft('b', NORTH, [
            [GREATER, 109],
            [LESSER, 227],
          ]),
        ),
      ),
    );
    expect(found).toMatchObject([{ birds: 27, severity: 'questioned' }]);
  });

  it('counts nothing apart that fits crosswise: species and pair against pair and species', () => {
    const found = namedApart(
      reconciled(
        aTally(
          'o1',
          raft('a', NORTH, [
            [GREATER, 54],
            [PAIR, 40],
          ]),
        ),
        aTally(
          'o2',
          raft('b', NORTH, [
            [PAIR, 53],
            [LESSER, 39],
          ]),
        ),
      ),
    );
    expect(found.map(({ severity }) => severity)).toEqual(['note']);
  });

  it('holds nothing against a line without a label that it is silent about', () => {
    const found = namedApart(
      reconciled(
        aTally('o1', [...raft(null, NORTH, [[PAIR, 330]]), ...raft(null, NORTH, [[REDHEAD, 100]])]),
        aTally(
          'o2',
          raft('b', NORTH, [
            [PAIR, 300],
            [REDHEAD, 100],
          ]),
        ),
      ),
    );
    expect(found).toEqual([]);
  });

  it('leaves a flock be whose birds may be in a plain total of the other', () => {
    const found = namedApart(
      reconciled(
        aTally('o1', raft('a', NORTH, [[GREATER, 60]])),
        aTally('o2', [...raft('b', NORTH, [[LESSER, 60]]), [GREATER, 60]]),
      ),
    );
    expect(found).toEqual([]);
  });

  it('says of three observers who differs from whom', () => {
    const [found, ...more] = namedApart(
      reconciled(
        aTally('o1', raft('a', NORTH, [[GREATER, 60]])),
        aTally('o2', raft('b', NORTH, [[LESSER, 60]])),
        aTally('o3', raft('c', NORTH, [[LESSER, 61]])),
      ),
    );
    expect(more).toEqual([]);
    expect(found).toMatchObject({ observers: ['o1', 'o2', 'o3'], birds: 60 });
    expect(found?.text).toMatch(/that o2 called Lesser Scaup; o1 called 60 birds/u);
  });
});

/** Two or three observers of one section, most of whose birds are in flocks that resemble each other. */
const flockedCount = fc
  .array(
    fc.uniqueArray(
      fc.record({
        taxon: fc.constantFrom(GREATER, LESSER, PAIR, REDHEAD, 'Aythya sp.'),
        number: fc.constantFrom(20, 60, 63, 200),
        flock: fc.constantFrom('a', 'a', 'b', 'b', null),
      }),
      { selector: ({ taxon, flock }) => `${taxon} ${flock}`, minLength: 2, maxLength: 5 },
    ),
    { minLength: 2, maxLength: 3 },
  )
  .map((observers) =>
    aCount(
      observers.map((lines, index) =>
        aTally(
          `o${index + 1}`,
          lines.map(({ taxon, number, flock }): ShortLine => [taxon, number, { flock }]),
        ),
      ),
    ),
  );

describe('flocks of random counts', () => {
  it('some are named differently, or the other properties would test nothing', () => {
    const some = fc.sample(flockedCount, { numRuns: 200, seed: 1 });
    const inFlocks = some.filter((snapshot) =>
      namedApart(reconcile(snapshot, [], aProtocol({ minimumUnits: 1e6 }))).some(({ text }) =>
        text.includes('taken for one flock'),
      ),
    );
    expect(inFlocks.length).toBeGreaterThan(20);
  });

  it('settle a disagreement by any of its proposals', () => {
    fc.assert(
      fc.property(flockedCount, randomProtocol, fc.nat(), (snapshot, settings, pick) => {
        const open = namedApart(reconcile(snapshot, [], settings));
        const chosen = open[pick % Math.max(open.length, 1)];
        const proposal = chosen?.proposals[pick % chosen.proposals.length];
        if (chosen === undefined || proposal === undefined) return;
        const ruling: Ruling = {
          id: 'r1',
          by: 'o4',
          reason: 'For the test',
          target: proposal.target,
          decision: proposal.decision,
          basis: chosen.basis,
        };
        const ruled = reconcile(snapshot, [ruling], settings);
        expect(ruled.rulings).toMatchObject([{ id: 'r1', state: 'applied' }]);
        const still = ruled.disagreements.find((each) => each.id === chosen.id);
        expect(still === undefined || still.ruledBy === 'r1').toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('propose no other total than the draft, and stand on lines of their group and observers', () => {
    fc.assert(
      fc.property(flockedCount, randomProtocol, (snapshot, settings) => {
        const result = reconcile(snapshot, [], settings);
        const observerOf = new Map(
          snapshot.tallies.flatMap((tally) =>
            tally.lines.map((line) => [line.id, tally.observer] as const),
          ),
        );
        for (const each of namedApart(result)) {
          const group = result.cells
            .find(({ id }) => id === each.cell)
            ?.groups.find(({ taxa }) => taxa.join('+') === each.group?.join('+'));
          for (const { decision } of each.proposals) {
            if (decision.kind !== 'set-numbers') continue;
            const total = decision.lines.reduce((sum, { number }) => sum + number, 0);
            expect(total).toBe(group?.consensus.number);
          }
          for (const line of each.lines) {
            expect(each.observers).toContain(observerOf.get(line));
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  it('has the same bytes in any order of tallies and lines, and ids that differ', () => {
    fc.assert(
      fc.property(flockedCount, randomProtocol, (snapshot, settings) => {
        const result = reconcile(snapshot, [], settings);
        const turned = {
          ...snapshot,
          tallies: [...snapshot.tallies]
            .reverse()
            .map((tally) => ({ ...tally, lines: [...tally.lines].reverse() })),
        };
        expect(JSON.stringify(reconcile(turned, [], settings))).toBe(JSON.stringify(result));
        const ids = result.disagreements.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { numRuns: 200 },
    );
  });
});
