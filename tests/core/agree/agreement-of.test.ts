import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { agreementOf } from '../../../server/core/agree/agreement-of.js';
import { brayCurtis } from '../../../server/core/agree/bray-curtis.js';
import { cohenKappa } from '../../../server/core/agree/cohen-kappa.js';
import { linConcordance } from '../../../server/core/agree/lin-concordance.js';
import { clopperPearsonInterval } from '../../../server/core/agree/proportion-interval.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import type { Statistic } from '../../../server/core/model/agreement.js';
import type { Cell, PairingFlow } from '../../../server/core/model/result.js';
import { aCell, type Counted } from './a-cell.js';

const twoUnits = { ...defaultProtocol, minimumUnits: 2 };
const [MARILA, AFFINIS, PAIR, REDHEAD, CANVASBACK, MALLARD] = [
  'Aythya marila',
  'Aythya affinis',
  'Aythya affinis/marila',
  'Aythya americana',
  'Aythya valisineria',
  'Anas platyrhynchos',
];
const GROUPS = [[MARILA, AFFINIS, PAIR], [REDHEAD], [CANVASBACK], [MALLARD]];
const TAXA = GROUPS.flat();

/** Two observers on one section, paired by hand: 382 agreed of 464 (417 and 459 birds). */
function workedByHand(): Cell {
  const flow = (kind: PairingFlow['kind'], a: string | null, b: string | null, number: number) => ({
    kind,
    a,
    b,
    number,
  });
  const cell = aCell('s1', { o1: {}, o2: {} }, GROUPS);
  const flows = [
    flow('agreed', MARILA, MARILA, 300),
    flow('agreed', AFFINIS, AFFINIS, 10),
    flow('agreed', PAIR, PAIR, 60),
    flow('agreed', REDHEAD, REDHEAD, 12),
    flow('compatible', AFFINIS, PAIR, 20),
    flow('differently', AFFINIS, MARILA, 10),
    flow('only-a', CANVASBACK, null, 5),
    flow('only-b', null, MARILA, 40),
    flow('only-b', null, MALLARD, 7),
  ];
  return { ...cell, pairings: cell.pairings.map((pairing) => ({ ...pairing, flows })) };
}

describe('agreementOf, a count worked by hand', () => {
  const { overall, byPair, byTaxon, observers } = agreementOf([workedByHand()], twoUnits);

  it('gives the shares by hand: 382 of 464 birds, and 1 − 52/876 over group totals', () => {
    expect(overall.percentAgreement).toMatchObject({ value: 0.823276, n: 4 });
    expect(overall.brayCurtisSimilarity).toMatchObject({ value: 0.940639, n: 4 });
    const byGroup = brayCurtis([400, 12, 5, 0], [440, 12, 0, 7]) ?? NaN;
    expect(overall.brayCurtisSimilarity.value).toBeCloseTo(1 - byGroup, 6);
  });

  it('gives the kappa of the table of the 412 birds that both saw', () => {
    const table = [
      [300, 0, 0, 0], // greater scaup
      [10, 10, 20, 0], // lesser scaup
      [0, 0, 60, 0], // the pair
      [0, 0, 0, 12], // redhead
    ];
    expect(overall.kappa.value).toBeCloseTo(cohenKappa(table).value ?? NaN, 6);
    expect(overall.kappa.value).toBeCloseTo(0.82689, 5); // by hand: (382/412 − pe)/(1 − pe)
    expect(overall.kappa.n).toBe(2);
  });

  it('has too few groups that both saw for a concordance or a ratio', () => {
    expect(overall.concordance).toEqual({ value: null, low: null, high: null, n: 2 });
    // 400/440 and 12/12: √(400/440)
    expect(observers.map(({ observer }) => observer)).toEqual(['o1', 'o2']);
    expect(observers[0]?.ratio).toMatchObject({ value: 0.953463, n: 2 });
    expect(observers[1]?.ratio).toMatchObject({ value: 1.048809, n: 2 });
  });

  it('gives the only pair the overall numbers', () => {
    expect(byPair).toMatchObject([{ a: 'o1', b: 'o2', ...overall }]);
    expect(byPair.length).toBe(1);
  });

  it('lists every taxon that was compared, sorted, with its n', () => {
    expect(byTaxon.map(({ taxon }) => taxon)).toEqual([...TAXA].sort());
    expect(byTaxon.every(({ percentAgreement }) => percentAgreement.value === null)).toBe(true);
    expect(byTaxon.every(({ percentAgreement }) => percentAgreement.n === 1)).toBe(true);
  });

  it('gives no numbers below the minimum of units, but their n', () => {
    const tooFew = agreementOf([workedByHand()], { ...defaultProtocol, minimumUnits: 5 });
    expect(tooFew.overall.percentAgreement).toEqual({ value: null, low: null, high: null, n: 4 });
    expect(tooFew.overall.kappa.value).toBeNull();
    expect(tooFew.observers[0]?.ratio).toEqual({ value: null, low: null, high: null, n: 2 });
  });
});

describe('agreementOf, what enters', () => {
  const counts = { o1: { [MARILA]: 10 }, o2: { [MARILA]: 12 } };
  const nothing = { value: null, low: null, high: null, n: 0 };

  it('leaves out flying birds, partial tallies and observers who share a member', () => {
    const cell = aCell('s1', counts, GROUPS);
    const flying = aCell('s1', counts, GROUPS, { layer: 'flying-through' });
    const partial = {
      ...cell,
      tallies: cell.tallies.map((tally) => ({ ...tally, counted: tally.observer !== 'o2' })),
    };
    const together = {
      ...cell,
      pairings: cell.pairings.map((pairing) => ({ ...pairing, independent: false })),
    };
    for (const left of [flying, partial, together]) {
      const { overall, byPair, byTaxon, observers } = agreementOf([left], twoUnits);
      expect(overall.percentAgreement).toEqual(nothing);
      expect([byPair, byTaxon, observers]).toEqual([[], [], []]);
    }
    expect(agreementOf([cell], twoUnits).overall.percentAgreement.n).toBe(1);
  });

  it('says so when a pairing names a taxon that no group has', () => {
    const cell = aCell('s1', counts, GROUPS);
    expect(() => agreementOf([{ ...cell, groups: [] }], twoUnits)).toThrow('no group of it has');
  });

  it('leaves groups that one observer saw none of out of concordance only', () => {
    const cells = [1, 2, 3, 4].map((number) =>
      aCell(
        `s${number}`,
        { o1: { [MARILA]: 100 * number, [MALLARD]: 5 }, o2: { [MARILA]: 110 * number } },
        GROUPS,
      ),
    );
    const { overall } = agreementOf(cells, twoUnits);
    const logs = (factor: number): number[] => [1, 2, 3, 4].map((n) => Math.log(factor * n));
    const expected = linConcordance(logs(100), logs(110));
    expect(overall.concordance.n).toBe(4);
    expect(overall.concordance.value).toBeCloseTo(expected.value ?? NaN, 6);
    expect(overall.concordance.low).toBeCloseTo(expected.low ?? NaN, 6);
    expect(overall.percentAgreement.n).toBe(8);
  });

  it('finds an observer who runs low against the geometric mean of the others', () => {
    const cells = [50, 80, 200, 500, 900].map((birds, index) =>
      aCell(
        `s${index + 1}`,
        {
          o1: { [MALLARD]: birds * 0.8 },
          o2: { [MALLARD]: birds * 0.5 },
          o3: { [MALLARD]: birds * 2 },
        },
        GROUPS,
      ),
    );
    const ratios = agreementOf(cells, defaultProtocol).observers.map(({ ratio }) => ratio.value);
    expect(ratios[0]).toBeCloseTo(0.8 / Math.sqrt(0.5 * 2), 6);
    expect(ratios[1]).toBeCloseTo(0.5 / Math.sqrt(0.8 * 2), 6);
    expect(ratios[2]).toBeCloseTo(2 / Math.sqrt(0.8 * 0.5), 6);
  });
});

const counted: fc.Arbitrary<Counted> = fc
  .tuple(...TAXA.map(() => fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 400 }))))
  .map((birds) => Object.fromEntries(TAXA.map((taxon, index) => [taxon, birds[index] ?? 0])));

const counts = fc.array(
  fc.dictionary(fc.constantFrom('o1', 'o2', 'o3', 'o4'), counted, {
    minKeys: 2,
    noNullPrototype: true,
  }),
  { minLength: 1, maxLength: 6 },
);

function cellsOf(tallies: readonly Readonly<Record<string, Counted>>[]): Cell[] {
  return tallies.map((tally, index) => aCell(`s${index + 1}`, tally, GROUPS));
}

function within(statistic: Statistic, lowest: number, highest: number): void {
  for (const number of [statistic.value, statistic.low, statistic.high]) {
    if (number === null) continue;
    expect(number).toBeGreaterThanOrEqual(lowest);
    expect(number).toBeLessThanOrEqual(highest);
  }
  if (statistic.low !== null && statistic.high !== null) {
    expect(statistic.low).toBeLessThanOrEqual(statistic.high);
  }
}

describe('agreementOf, properties', () => {
  it('keeps every measure within its bounds', () => {
    fc.assert(
      fc.property(counts, (tallies) => {
        const { overall, byPair, byTaxon, observers } = agreementOf(cellsOf(tallies), twoUnits);
        for (const measures of [overall, ...byPair, ...byTaxon]) {
          within(measures.percentAgreement, 0, 1);
          within(measures.brayCurtisSimilarity, 0, 1);
          within(measures.concordance, -1, 1);
        }
        for (const { kappa } of [overall, ...byPair]) within(kappa, -1, 1);
        for (const { ratio } of observers) within(ratio, 0, Infinity);
      }),
      { numRuns: 25 },
    );
  });

  it('does not depend on the order of cells and pairings', () => {
    fc.assert(
      fc.property(counts, (tallies) => {
        const cells = cellsOf(tallies);
        const turned = cells
          .map((cell) => ({ ...cell, pairings: [...cell.pairings].reverse() }))
          .reverse();
        expect(JSON.stringify(agreementOf(turned, twoUnits))).toBe(
          JSON.stringify(agreementOf(cells, twoUnits)),
        );
      }),
      { numRuns: 25 },
    );
  });

  it('does not depend on the names of observers', () => {
    const renamed: Record<string, string> = { o1: 'z', o2: 'c', o3: 'y', o4: 'b' };
    fc.assert(
      fc.property(counts, (tallies) => {
        const others = tallies.map((tally) =>
          Object.fromEntries(
            Object.entries(tally).map(([observer, birds]) => [renamed[observer] ?? '', birds]),
          ),
        );
        const before = agreementOf(cellsOf(tallies), twoUnits);
        const after = agreementOf(cellsOf(others), twoUnits);
        expect(after.overall).toEqual(before.overall);
        expect(after.byTaxon).toEqual(before.byTaxon);
        for (const { observer, ratio } of before.observers) {
          const same = after.observers.find((each) => each.observer === renamed[observer]);
          expect(same?.ratio).toEqual(ratio);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('finds identical observers in perfect agreement, with doubt that more groups lessen', () => {
    fc.assert(
      fc.property(fc.array(counted, { minLength: 2, maxLength: 6 }), (tallies) => {
        const cells = cellsOf(tallies.map((tally) => ({ o1: tally, o2: tally, o3: tally })));
        const { overall, observers } = agreementOf(cells, twoUnits);
        const { percentAgreement, brayCurtisSimilarity, concordance, kappa } = overall;
        if (percentAgreement.value === null) return;
        const { low } = clopperPearsonInterval(percentAgreement.n, percentAgreement.n);
        for (const share of [percentAgreement, brayCurtisSimilarity]) {
          expect(share.value).toBe(1);
          expect(share.low).toBeCloseTo(low, 6);
          expect(share.high).toBe(1);
        }
        for (const { value } of [concordance, kappa]) expect(value ?? 1).toBe(1);
        for (const { ratio } of observers) expect(ratio.value ?? 1).toBe(1);
      }),
      { numRuns: 25 },
    );
  });
});
