/*
 * 467 things in 7 categories.
 * Source: Sison CP, Glaz J (1995) J Am Stat Assoc 90:366-369, example 1; Goodman LA (1965) Technometrics
 * 7:247-254. Printed limits of Goodman's intervals (3 decimals) and those of the R package MultinomialCI
 * for Sison and Glaz are quoted in the test results of the Python package statsmodels.
 * Expected: Goodman's by formula and with statsmodels 0.13.5, which agree; of Sison and Glaz, statsmodels
 * and MultinomialCI differ by 2e-5; these are those of statsmodels.
 */
import { describe, expect, it } from 'vitest';
import {
  goodmanIntervals,
  sisonGlazIntervals,
} from '../../server/core/agree/simultaneous-proportions.js';

const COUNTS = [56, 72, 73, 59, 62, 87, 58];
const EXPECTED = {
  goodman: [
    [0.0851672391387, 0.16626140813],
    [0.114532918905, 0.204372582695],
    [0.116395289224, 0.206727515772],
    [0.0906056708912, 0.173474886565],
    [0.0960773800482, 0.180655087595],
    [0.142749109163, 0.239415943372],
    [0.0887890581298, 0.171074195931],
  ],
  sisonGlaz: [
    [0.0792291220557, 0.16435573404],
    [0.113490364026, 0.19861697601],
    [0.115631691649, 0.200758303633],
    [0.0856531049251, 0.17077971691],
    [0.0920770877944, 0.177203699779],
    [0.145610278373, 0.230736890357],
    [0.0835117773019, 0.168638389287],
  ],
} as const;

describe('intervals for seven shares at once', () => {
  it.each([
    ['Goodman', goodmanIntervals, EXPECTED.goodman, 1e-9],
    ['Sison and Glaz', sisonGlazIntervals, EXPECTED.sisonGlaz, 1e-9],
  ] as const)('%s', (_name, intervalsOf, expected, within) => {
    const found = intervalsOf(COUNTS);
    expect(found).toHaveLength(7);
    expected.forEach(([low, high], category) => {
      expect(Math.abs((found[category]?.low ?? NaN) - low)).toBeLessThan(within);
      expect(Math.abs((found[category]?.high ?? NaN) - high)).toBeLessThan(within);
    });
  });
});
