/*
 * In how many of 20 dune meadows each of 30 plants grew.
 * Source: Jongman RHG, ter Braak CJF, van Tongeren OFR (1987) Data Analysis in Community and Landscape
 * Ecology; R data vegan::dune.
 * Expected: computed with the R package vegan 2.6.4; the estimate re-derived in Python.
 */
import { expect, test } from 'vitest';
import { chaoLowerBound } from '../../server/core/agree/detection/chao-lower-bound.js';
import { jackknifeNumber } from '../../server/core/agree/detection/jackknife-number.js';
import { expectRelative } from '../support/expect-relative.js';

const MEADOWS = [
  7, 10, 2, 8, 6, 6, 5, 1, 1, 2, 5, 6, 1, 3, 5, 4, 12, 7, 14, 13, 6, 5, 7, 3, 18, 3, 16, 3, 15, 3,
];
const EXPECTED = {
  S_obs: 30,
  m: 20,
  q1: 3,
  q2: 2,
  chao2_with_small_sample_factor: 32.1375,
  se: 3.24250337317,
  chao2_no_factor: 32.25,
  jack1: 32.85,
};

/** How many plants grew in one meadow, in two, and so on. */
const FREQUENCIES = Array.from(
  { length: EXPECTED.m },
  (_, less) => MEADOWS.filter((each) => each === less + 1).length,
);

test('the lower bound of species from meadows that had them', () => {
  const found = chaoLowerBound(FREQUENCIES, EXPECTED.m);
  expect(FREQUENCIES.slice(0, 2)).toEqual([EXPECTED.q1, EXPECTED.q2]);
  expect(found.seen).toBe(EXPECTED.S_obs);
  expectRelative(found.value, EXPECTED.chao2_with_small_sample_factor, 1e-9);
  expectRelative(found.standardError, EXPECTED.se, 1e-9);
  expectRelative(chaoLowerBound(FREQUENCIES).value, EXPECTED.chao2_no_factor, 1e-9);
});

test('the jackknife of species', () => {
  const found = jackknifeNumber(FREQUENCIES, EXPECTED.m, 1);
  expectRelative(found.value, EXPECTED.jack1, 1e-12);
  // By hand: 3 × (1 + 19/20)² + 27 − 32.85.
  expectRelative(found.standardError, Math.sqrt(3 * 1.95 ** 2 + 27 - 32.85), 1e-12);
  // Order 2 by hand: 30 + 3 × 37/20 − 2 × 18² / (20 × 19).
  expectRelative(
    jackknifeNumber(FREQUENCIES, EXPECTED.m, 2).value,
    30 + (3 * 37) / 20 - (2 * 324) / 380,
    1e-12,
  );
});
