/*
 * Source: Ogle DH (2016) Introductory Fisheries Analyses with R, and the example of its R package FSA,
 * mrClosed (346 marked, 184 in the second sample, 49 of them marked); formulas Chapman (1951), Seber
 * (1982) The Estimation of Animal Abundance, chapter 3.
 * Expected: computed from Seber's closed formulas in Python on the published numbers.
 */
import { expect, test } from 'vitest';
import { estimateFromTwoObservers } from '../../server/core/agree/detection/two-observers.js';
import { expectRelative } from '../support/expect-relative.js';

const EXPECTED = {
  p1: 0.266304347826,
  p2: 0.14161849711,
  p_either: 0.370209223423,
  lincoln_petersen: 1299.26530612,
  var_lincoln_petersen: 25276.4191791,
  chapman: 1282.9,
  var_chapman_seber: 20187.4394118,
  se_chapman: 142.082509169,
  cv_chapman: 0.110751039963,
  normal_ci: [1004.4233992, 1561.3766008],
  lognormal_ci_on_unseen: [1049.15431257, 1612.81154446],
  bailey: 1280.2,
  seen_by_at_least_one: 481,
};

test('346 marked, 184 drawn, 49 of them marked', () => {
  const found = estimateFromTwoObservers({ first: 346, second: 184, both: 49 });
  expect(found.seen).toBe(EXPECTED.seen_by_at_least_one);
  expectRelative(found.chanceFirst ?? NaN, EXPECTED.p1, 1e-9);
  expectRelative(found.chanceSecond ?? NaN, EXPECTED.p2, 1e-9);
  expectRelative(1 - (found.missedByAll?.value ?? NaN), EXPECTED.p_either, 1e-9);
  expectRelative(found.lincolnPetersen?.value ?? NaN, EXPECTED.lincoln_petersen, 1e-9);
  expectRelative(found.lincolnPetersen?.variance ?? NaN, EXPECTED.var_lincoln_petersen, 1e-9);
  expectRelative(found.chapman.value, EXPECTED.chapman, 1e-9);
  expectRelative(found.chapman.variance, EXPECTED.var_chapman_seber, 1e-9);
  expectRelative(found.chapman.standardError, EXPECTED.se_chapman, 1e-9);
  expectRelative(found.chapman.standardError / found.chapman.value, EXPECTED.cv_chapman, 1e-9);
  expectRelative(found.chapman.normalInterval.low, EXPECTED.normal_ci[0] ?? NaN, 1e-9);
  expectRelative(found.chapman.normalInterval.high, EXPECTED.normal_ci[1] ?? NaN, 1e-9);
  expectRelative(found.chapman.interval.low, EXPECTED.lognormal_ci_on_unseen[0] ?? NaN, 1e-9);
  expectRelative(found.chapman.interval.high, EXPECTED.lognormal_ci_on_unseen[1] ?? NaN, 1e-9);
  expectRelative(found.bailey, EXPECTED.bailey, 1e-9);
});
