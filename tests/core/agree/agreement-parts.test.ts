import { describe, expect, it } from 'vitest';
import { agreementOf } from '../../../server/core/agree/agreement-of.js';
import { ratioLimitsOfAgreement } from '../../../server/core/agree/bland-altman.js';
import { intraclassCorrelations } from '../../../server/core/agree/intraclass-correlation.js';
import { krippendorffAlpha } from '../../../server/core/agree/krippendorff-alpha.js';
import { ownAgreement } from '../../../server/core/agree/own-agreement.js';
import { pabak } from '../../../server/core/agree/pabak.js';
import { weightedKappa } from '../../../server/core/agree/weighted-kappa.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import type { Cell, PairingFlow } from '../../../server/core/model/result.js';
import { aCell } from './a-cell.js';

const [MARILA, AFFINIS, PAIR, MALLARD] = [
  'Aythya marila',
  'Aythya affinis',
  'Aythya affinis/marila',
  'Anas platyrhynchos',
];
const GROUPS = [[MARILA, AFFINIS, PAIR], [MALLARD]];
const protocol = { ...defaultProtocol, minimumUnits: 2 };

/** Two sections, paired by hand. */
function twoSections(): Cell[] {
  const flow = (kind: PairingFlow['kind'], a: string | null, b: string | null, number: number) => ({
    kind,
    a,
    b,
    number,
  });
  const flows = {
    s1: [
      flow('agreed', MARILA, MARILA, 30),
      flow('compatible', PAIR, MARILA, 10),
      flow('differently', AFFINIS, MARILA, 5),
      flow('agreed', MALLARD, MALLARD, 20),
      flow('only-b', null, MALLARD, 4),
    ],
    s2: [
      flow('agreed', PAIR, PAIR, 40),
      flow('compatible', AFFINIS, PAIR, 8),
      flow('agreed', MALLARD, MALLARD, 6),
      flow('only-a', MALLARD, null, 3),
    ],
  };
  return Object.entries(flows).map(([id, own]) => {
    const cell = aCell(id, { o1: {}, o2: {} }, GROUPS);
    return { ...cell, pairings: cell.pairings.map((pairing) => ({ ...pairing, flows: own })) };
  });
}

describe('what a pair of observers called birds', () => {
  const agreement = agreementOf(twoSections(), protocol);
  const [pair] = agreement.byPair;

  it('is a table that adds up to the pairing balances', () => {
    expect(pair?.confusion.taxa).toEqual([MALLARD, AFFINIS, PAIR, MARILA].sort());
    expect(pair?.confusion.entries).toContainEqual({ a: MALLARD, b: MALLARD, number: 26 });
    expect(pair?.confusion.entries).toContainEqual({ a: PAIR, b: MARILA, number: 10 });
    expect(pair?.confusion.entries).toContainEqual({ a: null, b: MALLARD, number: 4 });
    const birds = pair?.confusion.entries.reduce((total, { number }) => total + number, 0);
    expect(birds).toBe(126);
    expect(agreement.confusion.entries.reduce((total, { number }) => total + number, 0)).toBe(126);
    expect(agreement.confusion.entries).toContainEqual({ a: MARILA, b: PAIR, number: 5 });
    expect(agreement.confusion.entries).toContainEqual({ a: PAIR, b: MARILA, number: 5 });
  });

  it('has kappas of that table, weighted by the overlap of candidate sets, and adjusted', () => {
    // Rows and columns: mallard, lesser scaup, the pair, greater scaup.
    const table = [
      [26, 0, 0, 0],
      [0, 0, 8, 5],
      [0, 0, 40, 10],
      [0, 0, 0, 30],
    ];
    const weights = [
      [1, 0, 0, 0],
      [0, 1, 0.5, 0],
      [0, 0.5, 1, 0.5],
      [0, 0, 0.5, 1],
    ];
    const { weightedKappa: weighted, adjustedKappa } = agreement.overall;
    expect(weighted.value).toBeCloseTo(weightedKappa(table, weights).value ?? NaN, 6);
    expect(adjustedKappa.value).toBeCloseTo(pabak(table).value, 6);
    expect(weighted.n).toBe(4);
    expect(weighted.value).toBeGreaterThan(agreement.overall.kappa.value ?? NaN);
  });

  it('tells how well each finds what the other finds', () => {
    const pairOf = (taxon: string) => pair?.sensitivities.find((each) => each.taxon === taxon);
    expect(pairOf(PAIR)).toMatchObject({ byA: 50, byB: 48, byBoth: 40 });
    expect(pairOf(MARILA)).toMatchObject({ byA: 30, byB: 45, byBoth: 30 });
    // In one section each: too few for a share. Mallards in both, all found.
    expect(pairOf(MARILA)?.ofA).toEqual({ value: null, low: null, high: null, n: 1 });
    expect(pairOf(MALLARD)?.ofA).toMatchObject({ value: 1, high: 1, n: 2 });
    const byTaxon = agreement.byTaxon.find(({ taxon }) => taxon === PAIR);
    // 98 times one of two said pair; 80 times the other did too.
    expect(byTaxon?.sensitivity).toMatchObject({ value: 0.816327, n: 2 });
  });

  it('turns round for the other observer', () => {
    const own = ownAgreement(agreement, 'o2').byPair[0];
    expect([own?.a, own?.b]).toEqual(['o2', 'o1']);
    expect(own?.confusion.entries).toContainEqual({ a: MARILA, b: PAIR, number: 10 });
    expect(own?.sensitivities.find(({ taxon }) => taxon === PAIR)).toMatchObject({
      byA: 48,
      byB: 50,
    });
    expect(own?.ratios.points[0]?.ratio).toBeCloseTo(1 / (pair?.ratios.points[0]?.ratio ?? NaN), 5);
    expect(own?.ratios.upper.value).toBeCloseTo(1 / (pair?.ratios.lower.value ?? NaN), 4);
    expect(ownAgreement(agreement, 'o3')).toEqual({ byPair: [], ratios: [] });
    expect(ownAgreement(agreement, 'o')).toEqual({ byPair: [], ratios: [] });
  });

  it('is told section by section', () => {
    expect(agreement.bySection.map(({ place }) => place)).toEqual([['s1'], ['s2']]);
    expect(agreement.bySection[0]?.percentAgreement.value).toBeCloseTo(50 / 69, 6);
    expect(agreement.bySection[1]?.percentAgreement.value).toBeCloseTo(46 / 57, 6);
  });
});

describe('numbers of several observers', () => {
  const counts = [
    { o1: 100, o2: 120, o3: 90 },
    { o1: 50, o2: 66, o3: 51 },
    { o1: 210, o2: 240, o3: 190 },
    { o1: 33, o2: 37, o3: 0 },
  ];
  const cells = counts.map((each, index) =>
    aCell(
      `s${index + 1}`,
      Object.fromEntries(Object.entries(each).map(([id, number]) => [id, { [MALLARD]: number }])),
      [[MALLARD]],
    ),
  );
  const agreement = agreementOf(cells, protocol);

  it('have limits of ratios and points, group by group', () => {
    const pair = agreement.byPair.find(({ a, b }) => a === 'o1' && b === 'o2');
    const limits = ratioLimitsOfAgreement([100, 50, 210, 33], [120, 66, 240, 37]);
    expect(pair?.ratios.points.length).toBe(4);
    expect(pair?.ratios.lower.value).toBeCloseTo(limits.lower.value, 6);
    expect(pair?.ratios.upper.high).toBeCloseTo(limits.upper.high, 6);
    const third = agreement.byPair.find(({ b }) => b === 'o3');
    expect(third?.ratios.points.length).toBe(3);
  });

  it('have intraclass correlations for every set that counted together', () => {
    expect(agreement.intraclass.map(({ observers }) => observers)).toEqual([
      ['o1', 'o2'],
      ['o1', 'o2', 'o3'],
      ['o1', 'o3'],
      ['o2', 'o3'],
    ]);
    const logs = counts.slice(0, 3).map((row) => Object.values(row).map(Math.log));
    const found = intraclassCorrelations(logs);
    const all = agreement.intraclass[1];
    expect(all?.agreementSingle.n).toBe(3);
    expect(all?.agreementSingle.value).toBeCloseTo(found.agreementSingle.value ?? NaN, 6);
    expect(all?.consistencyMean.low).toBeCloseTo(found.consistencyMean.low ?? NaN, 5);
  });

  it('have an alpha over all observers, zeros and gaps included', () => {
    const alpha = krippendorffAlpha(
      counts.map((row) => Object.values(row)),
      'ratio',
    );
    expect(agreement.overall.alpha.value).toBeCloseTo(alpha ?? NaN, 6);
    expect(agreement.overall.alpha.n).toBe(4);
  });

  it('are within tolerance where the smaller is four fifths of the larger', () => {
    // Of 12 pairs: 100/120, 100/90, 90/120 not; 50/66 not, 50/51, 51/66 not; 210/240, 210/190,
    // 190/240 not; 33/37, and two zeros not: 6.
    expect(agreement.overall.withinTolerance).toMatchObject({ value: 0.5, n: 4 });
  });

  it('have a model and Mandel’s h of those who counted the same', () => {
    expect(agreement.observerModel).toMatchObject({ n: 11, groups: 4 });
    expect(agreement.observerModel?.observers.map(({ observer }) => observer)).toEqual([
      'o1',
      'o2',
      'o3',
    ]);
    const [consistency] = agreement.observerConsistency;
    expect(consistency?.groups).toBe(3);
    expect(agreement.observerConsistency.length).toBe(1);
    const sum = consistency?.observers.reduce((total, { h }) => total + (h ?? 0), 0);
    expect(sum).toBeCloseTo(0, 5);
    expect(consistency?.hCritical.questioned).toBeLessThan(consistency?.hCritical.serious ?? 0);
  });

  it('say nothing below the minimum', () => {
    const few = agreementOf(cells, { ...defaultProtocol, minimumUnits: 5 });
    expect(few.observerModel).toBeNull();
    expect(few.observerConsistency).toEqual([]);
    expect(few.overall.alpha).toEqual({ value: null, low: null, high: null, n: 4 });
    expect(few.byPair[0]?.ratios.meanRatio.value).toBeNull();
    expect(few.intraclass.every(({ oneWayMean }) => oneWayMean.value === null)).toBe(true);
  });

  it('never hold NaN or infinity, whatever the counts', () => {
    const odd = [
      aCell('s1', { o1: { [MALLARD]: 0 }, o2: { [MALLARD]: 5 }, o3: {} }, [[MALLARD]]),
      aCell('s2', { o1: { [MALLARD]: 5 }, o2: { [MALLARD]: 5 }, o3: { [MALLARD]: 5 } }, [
        [MALLARD],
      ]),
      aCell('s3', { o1: { [MALLARD]: 5 }, o2: { [MALLARD]: 5 }, o3: { [MALLARD]: 5 } }, [
        [MALLARD],
      ]),
    ];
    for (const some of [[], odd.slice(0, 1), odd, odd.slice(1)]) {
      const walk = (value: unknown): void => {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
        else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk);
      };
      walk(agreementOf(some, protocol));
    }
  });
});
