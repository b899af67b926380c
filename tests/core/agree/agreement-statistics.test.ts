import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brayCurtis } from '../../../server/core/agree/bray-curtis.js';
import { cohenKappa } from '../../../server/core/agree/cohen-kappa.js';
import { concordanceOfSums, linConcordance } from '../../../server/core/agree/lin-concordance.js';
import { percentAgreement } from '../../../server/core/agree/percent-agreement.js';
import {
  clopperPearsonInterval,
  wilsonInterval,
} from '../../../server/core/agree/proportion-interval.js';
import { weightedKappa } from '../../../server/core/agree/weighted-kappa.js';
import { zOfLevel } from '../../../server/core/math/normal.js';
import {
  DUNE_BRAY_CURTIS,
  DUNE_JACCARD_QUANTITATIVE,
  DUNE_SITES,
  DUNE_SORENSEN,
} from '../../published/bray-curtis.js';
import { COHEN_1968, FLEISS_COHEN_EVERITT, SALMON } from '../../published/kappa.js';
import { MINI_WRIGHT, PEAK_FLOW_CONCORDANCE, WRIGHT } from '../../published/peak-flow.js';
import { PROPORTIONS } from '../../published/proportions.js';
import { expectRelative } from '../../support/expect-relative.js';

const TOLERANCE = 1e-9;
const lists = fc
  .integer({ min: 3, max: 12 })
  .chain((n) =>
    fc.tuple(
      fc.array(fc.integer({ min: 0, max: 900 }), { minLength: n, maxLength: n }),
      fc.array(fc.integer({ min: 0, max: 900 }), { minLength: n, maxLength: n }),
    ),
  );
const tables = fc
  .integer({ min: 2, max: 5 })
  .chain((size) =>
    fc.array(fc.array(fc.nat(40), { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size,
    }),
  )
  .filter((table) => table.flat().some((count) => count > 0));

function transpose(table: readonly (readonly number[])[]): number[][] {
  return table.map((_, i) => table.map((row) => row[i] ?? NaN));
}

describe('linConcordance', () => {
  it('agrees with epiR on the peak flow data', () => {
    const found = linConcordance(WRIGHT, MINI_WRIGHT);
    const expected = PEAK_FLOW_CONCORDANCE;
    expectRelative(found.value ?? NaN, expected.rho_c, TOLERANCE);
    expectRelative(found.low ?? NaN, expected.z_transform_ci95[0], TOLERANCE);
    expectRelative(found.high ?? NaN, expected.z_transform_ci95[1], TOLERANCE);
    expectRelative(found.standardError ?? NaN, expected.se_asymptotic, TOLERANCE);
    expectRelative(found.correlation ?? NaN, expected.pearson_r, TOLERANCE);
    expectRelative(found.biasCorrection ?? NaN, expected.bias_correction_Cb, TOLERANCE);
    expectRelative(found.scaleShift ?? NaN, expected.scale_shift, TOLERANCE);
    expectRelative(found.locationShift ?? NaN, expected.location_shift, TOLERANCE);
    const { value, standardError } = found;
    expectRelative((standardError ?? NaN) / (1 - (value ?? NaN) ** 2), expected.se_z, TOLERANCE);
    [-1, 1].forEach((side, end) => {
      const limit = (value ?? NaN) + side * zOfLevel(0.95) * (standardError ?? NaN);
      expectRelative(limit, expected.asymptotic_ci95[end] ?? NaN, TOLERANCE);
    });
  });

  it('is symmetric, lies within ±1 and within its interval, and agrees with its sums', () => {
    fc.assert(
      fc.property(lists, ([x, y]) => {
        const found = linConcordance(Object.freeze(x), Object.freeze(y));
        const swapped = linConcordance(y, x);
        const products = x.map((value, i) => value * (y[i] ?? NaN));
        const add = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
        const fromSums = concordanceOfSums({
          n: x.length,
          x: add(x),
          y: add(y),
          xx: add(x.map((value) => value ** 2)),
          yy: add(y.map((value) => value ** 2)),
          xy: add(products),
        });
        if (found.value === null) {
          expect(fromSums).toBeNull();
          return;
        }
        expect(Math.abs(found.value - (fromSums ?? NaN))).toBeLessThan(1e-9);
        expect(Math.abs(found.value - (swapped.value ?? NaN))).toBeLessThan(1e-12);
        expect(Math.abs(found.value)).toBeLessThanOrEqual(1);
        if (found.low === null || found.high === null) return;
        expect(found.low).toBeLessThanOrEqual(found.value);
        expect(found.high).toBeGreaterThanOrEqual(found.value);
        expect(found.low).toBeGreaterThanOrEqual(-1);
        expect(found.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('gives equal lists 1, and has no answer where nothing varies', () => {
    expect(linConcordance([1, 5, 9], [1, 5, 9])).toMatchObject({ value: 1, low: 1, high: 1 });
    expect(linConcordance([4, 4, 4], [4, 4, 4]).value).toBeNull();
    expect(linConcordance([4, 4, 4], [5, 5, 5]).value).toBe(0);
    expect(linConcordance([4, 4, 4], [5, 6, 7])).toMatchObject({ value: 0, low: null });
    expect(() => linConcordance([1, 2], [1, 2])).toThrow('at least 3');
  });
});

describe('kappa', () => {
  it('agrees with Fleiss, Cohen and Everitt (1969), plain and weighted', () => {
    const { table, weights, expected } = FLEISS_COHEN_EVERITT;
    const plain = cohenKappa(table);
    expectRelative(plain.value ?? NaN, expected.kappa, TOLERANCE);
    expectRelative(plain.standardError ?? NaN, expected.se_kappa, TOLERANCE);
    expectRelative(plain.low ?? NaN, expected.kappa_ci95[0], TOLERANCE);
    expectRelative(plain.high ?? NaN, expected.kappa_ci95[1], TOLERANCE);
    const weighted = weightedKappa(table, weights);
    expectRelative(weighted.value ?? NaN, expected.weighted_kappa, TOLERANCE);
    expectRelative(
      weighted.standardError ?? NaN,
      expected.se_weighted_kappa_fleiss_cohen_everitt,
      TOLERANCE,
    );
    expectRelative(weighted.low ?? NaN, expected.weighted_kappa_ci95[0], TOLERANCE);
    expectRelative(weighted.high ?? NaN, expected.weighted_kappa_ci95[1], TOLERANCE);
    const byDistance = table.map((_, i) => table.map((__, j) => 1 - Math.abs(i - j) / 2));
    const linear = weightedKappa(table, byDistance);
    expectRelative(linear.value ?? NaN, expected.linear_kappa, TOLERANCE);
    expectRelative(linear.standardError ?? NaN, expected.se_linear_kappa, TOLERANCE);
  });

  it('agrees with Cohen (1968), whose weights are of disagreement', () => {
    const { proportions, n, disagreementWeights, expected } = COHEN_1968;
    const table = proportions.map((row) => row.map((share) => share * n));
    const weights = disagreementWeights.map((row) => row.map((weight) => 1 - weight / 6));
    expectRelative(cohenKappa(table).value ?? NaN, expected.kappa, TOLERANCE);
    expectRelative(weightedKappa(table, weights).value ?? NaN, expected.weighted_kappa, TOLERANCE);
  });

  it('agrees with epiR on the salmon samples', () => {
    const found = cohenKappa(SALMON.table);
    expectRelative(found.value ?? NaN, SALMON.expected.kappa, TOLERANCE);
    expectRelative(found.observed, SALMON.expected.observed, TOLERANCE);
    expectRelative(found.expected, SALMON.expected.expectedByChance, TOLERANCE);
    expectRelative(percentAgreement(SALMON.table) ?? NaN, SALMON.expected.observed, TOLERANCE);
  });

  it('is symmetric in the observers, at most 1, and 1 for identical observers', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const found = cohenKappa(table);
        const swapped = cohenKappa(transpose(table));
        const diagonal = table.map((row, i) => row.map((count, j) => (i === j ? count + 1 : 0)));
        expect(cohenKappa(diagonal).value).toBeCloseTo(1, 12);
        if (found.value === null) {
          expect(swapped.value).toBeNull();
          return;
        }
        expect(Math.abs(found.value - (swapped.value ?? NaN))).toBeLessThan(1e-12);
        expect(found.value).toBeLessThanOrEqual(1 + 1e-12);
        expect(found.value).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(found.observed).toBeCloseTo(percentAgreement(table) ?? NaN, 12);
      }),
    );
  });

  it('has no answer where both gave everything one name', () => {
    expect(
      cohenKappa([
        [12, 0],
        [0, 0],
      ]).value,
    ).toBeNull();
    expect(percentAgreement([[0]])).toBeNull();
    expect(() => cohenKappa([[1, 2]])).toThrow('square table');
    expect(() => cohenKappa([[0]])).toThrow('at least one thing');
    expect(() => cohenKappa([[-1]])).toThrow('at least 0');
  });
});

describe('brayCurtis', () => {
  it('agrees with vegan on the dune sites', () => {
    DUNE_SITES.forEach((x, i) =>
      DUNE_SITES.forEach((y, j) => {
        const found = brayCurtis(x, y) ?? NaN;
        expectRelative(found, DUNE_BRAY_CURTIS[i]?.[j] ?? NaN, TOLERANCE);
        const jaccard = DUNE_JACCARD_QUANTITATIVE[i]?.[j] ?? NaN;
        expectRelative((2 * found) / (1 + found), jaccard, TOLERANCE);
        const [here, there] = [x, y].map((site) => site.map((cover) => Math.sign(cover)));
        const sorensen = DUNE_SORENSEN[i]?.[j] ?? NaN;
        expectRelative(brayCurtis(here ?? [], there ?? []) ?? NaN, sorensen, TOLERANCE);
      }),
    );
  });

  it('lies from 0 to 1, is symmetric, and 0 for equal lists', () => {
    fc.assert(
      fc.property(lists, ([x, y]) => {
        const found = brayCurtis(x, y);
        expect(brayCurtis(y, x)).toBe(found);
        expect(found ?? 0).toBeGreaterThanOrEqual(0);
        expect(found ?? 0).toBeLessThanOrEqual(1);
        expect(brayCurtis(x, x) ?? 0).toBe(0);
      }),
    );
  });

  it('has no answer for two empty lists and refuses negative numbers', () => {
    expect(brayCurtis([0, 0], [0, 0])).toBeNull();
    expect(() => brayCurtis([1], [1, 2])).toThrow('same length');
    expect(() => brayCurtis([-1], [1])).toThrow('at least 0');
  });
});

describe('intervals for a proportion', () => {
  it.each(PROPORTIONS)('agree with Newcombe (1998) for $x of $n', (row) => {
    const wilson = wilsonInterval(row.x, row.n);
    const exact = clopperPearsonInterval(row.x, row.n);
    expectRelative(wilson.low, row.wilson[0], TOLERANCE);
    expectRelative(wilson.high, row.wilson[1], TOLERANCE);
    expectRelative(exact.low, row.clopper_pearson[0], TOLERANCE);
    expectRelative(exact.high, row.clopper_pearson[1], TOLERANCE);
  });

  it('hold the share, stay within 0 to 1, and mirror for what is left', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), fc.nat(), (n, draw) => {
        const successes = draw % (n + 1);
        for (const intervalOf of [wilsonInterval, clopperPearsonInterval]) {
          const { low, high } = intervalOf(successes, n);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(successes / n);
          expect(high).toBeGreaterThanOrEqual(successes / n);
          expect(high).toBeLessThanOrEqual(1);
          expect(intervalOf(n - successes, n).low).toBeCloseTo(1 - high, 10);
        }
      }),
    );
  });

  it('refuse what is no share', () => {
    expect(() => wilsonInterval(3, 2)).toThrow('0 to n of n');
    expect(() => clopperPearsonInterval(0, 0)).toThrow('0 to n of n');
  });
});
