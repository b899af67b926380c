/*
 * τ² by likelihood and its Q-profile interval; sources in random-effects.ts. Its moment estimates are
 * held against the same data in tests/core/consensus/heterogeneity.test.ts.
 */
import { describe, expect, it } from 'vitest';
import { likelihoodTau2, tau2Interval } from '../../server/core/agree/likelihood-tau2.js';
import { iSquaredOfTau2 } from '../../server/core/consensus/i-squared.js';
import { randomEffectsMean } from '../../server/core/consensus/random-effects-mean.js';
import { expectRelative } from '../support/expect-relative.js';
import { BCG, PAULE_MANDEL_TWO_SETS } from './random-effects.js';

describe.each([
  ['BCG trials', BCG],
  ['two sets of Paule and Mandel', PAULE_MANDEL_TWO_SETS],
] as const)('%s', (_name, { yi, vi, expected }) => {
  it.each([
    ['restricted', expected.REML],
    ['full', expected.ML],
  ] as const)(
    'τ² by %s likelihood, with its mean',
    (kind, { tau2, mu, se, lower, upper, ...of }) => {
      // metafor's steps end at a relative change of 1e-5 of τ².
      const found = likelihoodTau2(yi, vi, kind);
      expectRelative(found, tau2, 1e-5);
      const mean = randomEffectsMean(yi, vi, found);
      expectRelative(mean.mean, mu, 1e-6);
      expectRelative(mean.standardError, se, 1e-5);
      expectRelative(mean.low, lower, 1e-5);
      expectRelative(mean.high, upper, 1e-5);
      const i2 = iSquaredOfTau2(found, vi);
      expectRelative(i2, of.I2_percent, 1e-5);
      expectRelative(1 / (1 - i2 / 100), of.H2, 1e-5);
    },
  );

  it('Q-profile interval', () => {
    const found = tau2Interval(yi, vi);
    expectRelative(found.low, expected.tau2_ci95_Q_profile[0], 1e-9);
    expectRelative(found.high, expected.tau2_ci95_Q_profile[1], 1e-9);
  });
});

it('has no spread where there is none, and refuses a single value', () => {
  for (const kind of ['restricted', 'full'] as const) {
    expect(likelihoodTau2([4, 4, 4], [1, 2, 3], kind)).toBe(0);
    expect(() => likelihoodTau2([4], [1], kind)).toThrow('at least 2 values');
  }
  expect(tau2Interval([4, 4], [1, 2])).toEqual({ low: 0, high: 0 });
  expect(() => tau2Interval([4], [1])).toThrow('at least 2 values');
});
