import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cochranQ } from '../../../server/core/consensus/cochran-q.js';
import { derSimonianLairdTau2 } from '../../../server/core/consensus/der-simonian-laird.js';
import { iSquared, iSquaredOfTau2 } from '../../../server/core/consensus/i-squared.js';
import { pauleMandelTau2 } from '../../../server/core/consensus/paule-mandel.js';
import { predictionInterval } from '../../../server/core/consensus/prediction-interval.js';
import {
  hartungKnappMean,
  randomEffectsMean,
} from '../../../server/core/consensus/random-effects-mean.js';
import { chiSquaredUpperTail } from '../../../server/core/math/chi-squared.js';
import { BCG, PAULE_MANDEL_TWO_SETS } from '../../published/random-effects.js';
import { expectRelative } from '../../support/expect-relative.js';

const DATA_SETS = [
  ['BCG trials', BCG],
  ['two sets of Paule and Mandel', PAULE_MANDEL_TWO_SETS],
] as const;

describe.each(DATA_SETS)('%s', (_name, { yi, vi, expected }) => {
  it('agrees on Q, tau2 and I2', () => {
    expectRelative(cochranQ(yi, vi), expected.Q, 1e-9);
    expectRelative(derSimonianLairdTau2(yi, vi), expected.DL.tau2, 1e-9);
    expectRelative(pauleMandelTau2(yi, vi), expected.PM.tau2, 1e-8);
    expectRelative(iSquared(expected.Q, yi.length), expected.DL.I2_percent, 1e-9);
    expectRelative(iSquaredOfTau2(expected.DL.tau2, vi), expected.DL.I2_percent, 1e-9);
    expectRelative(iSquaredOfTau2(expected.PM.tau2, vi), expected.PM.I2_percent, 1e-9);
  });

  it.each(['fixed', 'DL', 'PM'] as const)('agrees on the mean with its interval: %s', (method) => {
    const tau2 = {
      fixed: 0,
      DL: derSimonianLairdTau2(yi, vi),
      PM: pauleMandelTau2(yi, vi),
    }[method];
    const found = randomEffectsMean(yi, vi, tau2);
    expectRelative(found.mean, expected[method].mu, 1e-8);
    expectRelative(found.standardError, expected[method].se, 1e-8);
    expectRelative(found.low, expected[method].lower, 1e-8);
    expectRelative(found.high, expected[method].upper, 1e-8);
  });

  it('agrees on the error of Hartung and Knapp and the prediction interval', () => {
    const tau2 = derSimonianLairdTau2(yi, vi);
    const found = hartungKnappMean(yi, vi, tau2);
    expectRelative(found.standardError, expected.DL_knapp_hartung.se, 1e-8);
    expectRelative(found.low, expected.DL_knapp_hartung.lower, 1e-8);
    expectRelative(found.high, expected.DL_knapp_hartung.upper, 1e-8);
    const plain = randomEffectsMean(yi, vi, tau2);
    // metafor's default takes the normal quantile.
    const predicted = predictionInterval(plain.mean, plain.standardError, tau2);
    expectRelative(predicted.low, expected.DL_prediction_interval95[0], 1e-8);
    expectRelative(predicted.high, expected.DL_prediction_interval95[1], 1e-8);
  });
});

describe('heterogeneity of counts', () => {
  it('gives the p-value of Q for the BCG trials', () => {
    expectRelative(
      chiSquaredUpperTail(cochranQ(BCG.yi, BCG.vi), BCG.expected.df),
      BCG.expected.Q_p,
      1e-8,
    );
  });

  it('refuses what no weighted mean can be taken of', () => {
    expect(() => cochranQ([1, 2], [0, 1])).toThrow('variances over 0');
    expect(() => derSimonianLairdTau2([1], [1])).toThrow('at least 2 values');
    expect(() => cochranQ([1, 2], [1])).toThrow('one variance for each value');
    expect(() => iSquared(-1, 2)).toThrow('Q of at least 0');
  });

  it('gives no heterogeneity to equal values', () => {
    expect(cochranQ([4, 4, 4], [1, 2, 3])).toBe(0);
    expect(iSquared(0, 3)).toBe(0);
    expect(pauleMandelTau2([4, 4, 4], [1, 2, 3])).toBe(0);
  });

  const studies = fc.array(
    fc.record({
      value: fc.double({ min: -3, max: 12, noNaN: true }),
      variance: fc.double({ min: 1e-6, max: 2, noNaN: true }),
    }),
    { minLength: 2, maxLength: 8 },
  );

  it('does not depend on order, to the last bit', () => {
    fc.assert(
      fc.property(studies, fc.nat(), (rows, turn) => {
        const at = turn % rows.length;
        const other = [...rows.slice(at), ...rows.slice(0, at)].reverse();
        const results = [rows, other].map((list) => {
          const values = Object.freeze(list.map((row) => row.value));
          const variances = Object.freeze(list.map((row) => row.variance));
          const tau2 = pauleMandelTau2(values, variances);
          const { mean, low, high } = randomEffectsMean(values, variances, tau2);
          return [
            cochranQ(values, variances),
            derSimonianLairdTau2(values, variances),
            tau2,
            mean,
            low,
            high,
          ];
        });
        expect(results[0]).toEqual(results[1]);
      }),
    );
  });

  it('meets the equation of Paule and Mandel, and keeps the mean among the values', () => {
    fc.assert(
      fc.property(studies, (rows) => {
        const values = rows.map((row) => row.value);
        const variances = rows.map((row) => row.variance);
        const tau2 = pauleMandelTau2(values, variances);
        const q = cochranQ(values, variances, tau2);
        if (tau2 > 0) expectRelative(q, values.length - 1, 1e-6);
        else expect(q).toBeLessThanOrEqual(values.length - 1);
        const { mean, weights } = randomEffectsMean(values, variances, tau2);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        expectRelative(
          weights.reduce((a, b) => a + b, 0),
          1,
          1e-12,
        );
        const i2 = iSquared(cochranQ(values, variances), values.length);
        expect(i2).toBeGreaterThanOrEqual(0);
        expect(i2).toBeLessThan(100);
      }),
    );
  });
});
