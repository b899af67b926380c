/*
 * Breaks of warp yarn: 2 wools, 3 tensions, 9 looms each.
 * Source: Tippett LHC (1950) Technological Applications of Statistics, p 106; R data warpbreaks.
 * Expected: computed with R 4.2.2 (anova); sums of squares re-derived in Python.
 */
import { expect, test } from 'vitest';
import { twoWayAnalysis } from '../../server/core/agree/analysis-of-variance.js';
import { expectRelative } from '../support/expect-relative.js';

/** Wools A and B; tensions low, medium and high. */
const BREAKS = [
  [
    [26, 30, 54, 25, 70, 52, 51, 26, 67],
    [18, 21, 29, 17, 12, 18, 35, 30, 36],
    [36, 21, 24, 18, 10, 43, 28, 15, 26],
  ],
  [
    [27, 14, 29, 19, 29, 31, 41, 20, 44],
    [42, 26, 19, 16, 39, 28, 21, 39, 29],
    [20, 21, 24, 17, 13, 15, 15, 16, 28],
  ],
];
const EXPECTED = {
  wool: { df: 1, SS: 450.666666667, MS: 450.666666667, F: 3.76528836112, p: 0.0582129759596 },
  tension: { df: 2, SS: 2034.25925926, MS: 1017.12962963, F: 8.49804664836, p: 0.000692620936713 },
  'wool:tension': {
    df: 2,
    SS: 1002.77777778,
    MS: 501.388888889,
    F: 4.18906896685,
    p: 0.0210441907279,
  },
  Residuals: { df: 48, SS: 5745.11111111, MS: 119.689814815 },
};

test('warp breaks by wool and tension', () => {
  const found = twoWayAnalysis(BREAKS);
  const pairs = [
    [found.rows, EXPECTED.wool],
    [found.columns, EXPECTED.tension],
    [found.interaction, EXPECTED['wool:tension']],
  ] as const;
  for (const [source, expected] of pairs) {
    expect(source?.degreesOfFreedom).toBe(expected.df);
    expectRelative(source?.sumOfSquares ?? NaN, expected.SS, 1e-9);
    expectRelative(source?.meanSquare ?? NaN, expected.MS, 1e-9);
    expectRelative(source?.f ?? NaN, expected.F, 1e-9);
    expectRelative(source?.p ?? NaN, expected.p, 1e-9);
  }
  expect(found.residual.degreesOfFreedom).toBe(EXPECTED.Residuals.df);
  expectRelative(found.residual.sumOfSquares, EXPECTED.Residuals.SS, 1e-9);
  expectRelative(found.residual.meanSquare ?? NaN, EXPECTED.Residuals.MS, 1e-9);
});
