/*
 * Golf tees laid out at St Andrews as 250 clusters and searched for by two independent observers.
 * Source: Buckland ST et al. (2004) Advanced Distance Sampling; Borchers DL, Buckland ST, Zucchini W
 * (2002) Estimating Animal Abundance; numbers as in the R package mrds (book.tee.data).
 * Expected: closed formulas in Python; the conditional likelihood with one chance an observer by the
 * R package VGAM. The true 250 is from memory: some clusters were harder to see than others, so that
 * every estimate which takes them as alike lies far below it.
 */
import { expect, test } from 'vitest';
import { fitHuggins } from '../../server/core/agree/detection/huggins.js';
import { estimateFromTwoObservers } from '../../server/core/agree/detection/two-observers.js';
import { expectRelative } from '../support/expect-relative.js';

const [ONLY_FIRST, ONLY_SECOND, BOTH, TRUE_CLUSTERS] = [20, 38, 104, 250];
const EXPECTED = {
  p1: 0.732394366197,
  p2: 0.838709677419,
  p_either: 0.956837801,
  lincoln_petersen: 169.307692308,
  var_lincoln_petersen: 73.7590464269,
  chapman: 169.238095238,
  var_chapman_seber: 11.6245240234,
  se_chapman: 3.40947562294,
  normal_ci: [162.555645811, 175.920544665],
  lognormal_ci_on_unseen: [165.010096659, 179.404764233],
  seen_by_at_least_one: 162,
  huggins_N: 169.307692308,
  huggins_SE: 3.44914777118,
};

test('two observers of golf tees', () => {
  const found = estimateFromTwoObservers({
    first: ONLY_FIRST + BOTH,
    second: ONLY_SECOND + BOTH,
    both: BOTH,
  });
  expect(found.seen).toBe(EXPECTED.seen_by_at_least_one);
  expectRelative(found.chanceFirst ?? NaN, EXPECTED.p1, 1e-9);
  expectRelative(found.chanceSecond ?? NaN, EXPECTED.p2, 1e-9);
  expectRelative(1 - (found.missedByAll?.value ?? NaN), EXPECTED.p_either, 1e-9);
  expectRelative(found.lincolnPetersen?.value ?? NaN, EXPECTED.lincoln_petersen, 1e-9);
  expectRelative(found.lincolnPetersen?.variance ?? NaN, EXPECTED.var_lincoln_petersen, 1e-9);
  expectRelative(found.chapman.value, EXPECTED.chapman, 1e-9);
  expectRelative(found.chapman.variance, EXPECTED.var_chapman_seber, 1e-9);
  expectRelative(found.chapman.standardError, EXPECTED.se_chapman, 1e-9);
  expectRelative(found.chapman.normalInterval.low, EXPECTED.normal_ci[0] ?? NaN, 1e-9);
  expectRelative(found.chapman.normalInterval.high, EXPECTED.normal_ci[1] ?? NaN, 1e-9);
  expectRelative(found.chapman.interval.low, EXPECTED.lognormal_ci_on_unseen[0] ?? NaN, 1e-9);
  expectRelative(found.chapman.interval.high, EXPECTED.lognormal_ci_on_unseen[1] ?? NaN, 1e-9);
  expect(found.profileInterval.high).toBeLessThan(TRUE_CLUSTERS);
});

test('the same by conditional likelihood, a chance an observer', () => {
  const flocks = [
    ...Array.from({ length: ONLY_FIRST }, () => [true, false]),
    ...Array.from({ length: ONLY_SECOND }, () => [false, true]),
    ...Array.from({ length: BOTH }, () => [true, true]),
  ].map((seenBy) => ({ seenBy, covariates: [] }));
  const found = fitHuggins(flocks, { intercepts: 'each' });
  if (!found.fitted) throw new Error(found.reason);
  expectRelative(found.flocks.value, EXPECTED.huggins_N, 1e-9);
  expectRelative(found.flocks.standardError, EXPECTED.huggins_SE, 1e-4);
});
