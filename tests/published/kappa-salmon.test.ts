/*
 * 291 salmon kidney samples, two laboratories.
 * Source: Dohoo I, Martin W, Stryhn H (2010) Veterinary Epidemiologic Research, 2nd ed., pp 98-99; R
 * package epiR, epi.kappa example 1, whose help quotes kappa 0.67, interval 0.56 to 0.79, z 11.53.
 * Expected: computed with epiR 2.0.57; PABAK and McNemar re-derived in Python. epiR's "fleiss" error is
 * the one under no agreement; the large-sample error of Fleiss, Cohen & Everitt is not among its own.
 */
import { expect, test } from 'vitest';
import { cohenKappa } from '../../server/core/agree/cohen-kappa.js';
import { pabak, prevalenceAndBias } from '../../server/core/agree/pabak.js';
import { zOfLevel } from '../../server/core/math/normal.js';
import { expectRelative } from '../support/expect-relative.js';

const TABLE = [
  [19, 10],
  [6, 256],
] as const;
const EXPECTED = {
  method_fleiss: {
    kappa: 0.673583847448,
    se: 0.0584255269776,
    lower: 0.559071918794,
    upper: 0.788095776102,
  },
  /** The simple error of Cohen (1960), in epiR also as "watson" and "altman"; not one of ours. */
  method_cohen: { se: 0.0793289128425, lower: 0.518102035344, upper: 0.829065659552 },
  prop_agree: { obs: 0.945017182131, exp: 0.831556075153 },
  pindex: {
    est: -0.814432989691,
    se: 0.0239442291235,
    lower: -0.86136281641,
    upper: -0.767503162971,
  },
  bindex: {
    est: 0.0137457044674,
    se: 0.0240457025085,
    lower: -0.0333830064323,
    upper: 0.060874415367,
  },
  pabak: { est: 0.890034364261, lower: 0.82449061552, upper: 0.936499137675 },
  mcnemar: { 'test.statistic': 1, df: 1, 'p.value': 0.317310507863 },
};

test('kappa, its adjustment, and why it needs one', () => {
  const kappa = cohenKappa(TABLE);
  expectRelative(kappa.value ?? NaN, EXPECTED.method_fleiss.kappa, 1e-9);
  expectRelative(kappa.standardErrorIfNone ?? NaN, EXPECTED.method_fleiss.se, 1e-9);
  expect((kappa.value ?? NaN) / (kappa.standardErrorIfNone ?? NaN)).toBeCloseTo(11.53, 2);
  expectRelative(kappa.observed, EXPECTED.prop_agree.obs, 1e-9);
  expectRelative(kappa.expected, EXPECTED.prop_agree.exp, 1e-9);
  const { value, observed, expected, n } = kappa;
  const simple = Math.sqrt((observed * (1 - observed)) / n) / (1 - expected);
  expectRelative(simple, EXPECTED.method_cohen.se, 1e-9);
  expectRelative((value ?? NaN) - zOfLevel(0.95) * simple, EXPECTED.method_cohen.lower, 1e-9);
  expectRelative((value ?? NaN) + zOfLevel(0.95) * simple, EXPECTED.method_cohen.upper, 1e-9);
  const adjusted = pabak(TABLE);
  expectRelative(adjusted.value, EXPECTED.pabak.est, 1e-9);
  expectRelative(adjusted.low, EXPECTED.pabak.lower, 1e-9);
  expectRelative(adjusted.high, EXPECTED.pabak.upper, 1e-9);
  const why = prevalenceAndBias(TABLE);
  expectRelative(why.prevalenceIndex, EXPECTED.pindex.est, 1e-9);
  expectRelative(why.biasIndex, EXPECTED.bindex.est, 1e-9);
  expectRelative(why.mcNemar?.chiSquared ?? NaN, EXPECTED.mcnemar['test.statistic'], 1e-9);
  expectRelative(why.mcNemar?.p ?? NaN, EXPECTED.mcnemar['p.value'], 1e-9);
});

test('two who agree on all have no bias to test', () => {
  expect(
    prevalenceAndBias([
      [3, 0],
      [0, 1],
    ]),
  ).toEqual({ prevalenceIndex: 0.5, biasIndex: 0, mcNemar: null });
  expect(() =>
    prevalenceAndBias([
      [0, 0],
      [0, 0],
    ]),
  ).toThrow('one thing');
});
