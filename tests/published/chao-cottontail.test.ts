/*
 * 135 cottontail rabbits released, 18 occasions, 76 caught.
 * Source: Edwards WR, Eberhardt L (1967) J Wildl Manage 31:87-96; Chao A (1987) Biometrics 43:783-791.
 * Data from memory, not held against print (76 animals and 142 captures agree with the literature).
 * Expected: the closed formulas, computed in Python.
 */
import { expect, test } from 'vitest';
import { chaoLowerBound } from '../../server/core/agree/detection/chao-lower-bound.js';
import { expectRelative } from '../support/expect-relative.js';

const EXPECTED = {
  S: 76,
  captures: 142,
  N: 133.78125,
  var: 577.022521973,
  se: 24.0212930953,
  lognormal_ci95_z1_96: [102.41911273, 202.373390571],
};

test('rabbits caught once, twice and so on', () => {
  const found = chaoLowerBound([43, 16, 8, 6, 0, 2, 1]);
  expect(found.seen).toBe(EXPECTED.S);
  expectRelative(found.value, EXPECTED.N, 1e-9);
  expectRelative(found.variance, EXPECTED.var, 1e-9);
  expectRelative(found.standardError, EXPECTED.se, 1e-9);
  // The source takes 1.96 for the normal quantile 1.959964.
  expectRelative(found.interval.low, EXPECTED.lognormal_ci95_z1_96[0] ?? NaN, 1e-5);
  expectRelative(found.interval.high, EXPECTED.lognormal_ci95_z1_96[1] ?? NaN, 1e-5);
});
