/*
 * Four judges, six targets, a rating each.
 * Source: Shrout PE, Fleiss JL (1979) Psychol Bull 86:420-428, Table 3.
 * Expected: computed with R 4.2.2; re-derived in Python.
 */
import { expect, test } from 'vitest';
import { twoWayAnalysis } from '../../server/core/agree/analysis-of-variance.js';
import { expectRelative } from '../support/expect-relative.js';
import { JUDGES } from './intraclass-correlation.js';

const EXPECTED = {
  target: { df: 5, SS: 56.2083333333, MS: 11.2416666667, F: 11.0272479564, p: 0.000134566516484 },
  judge: { df: 3, SS: 97.4583333333, MS: 32.4861111111, F: 31.8664850136, p: 9.45426320247e-7 },
  Residuals: { df: 15, SS: 15.2916666667, MS: 1.01944444444 },
};

test('ratings by target and judge', () => {
  const found = twoWayAnalysis(JUDGES.map((row) => row.map((rating) => [rating])));
  expect(found.interaction).toBeNull();
  for (const [source, expected] of [
    [found.rows, EXPECTED.target],
    [found.columns, EXPECTED.judge],
  ] as const) {
    expect(source.degreesOfFreedom).toBe(expected.df);
    expectRelative(source.sumOfSquares, expected.SS, 1e-9);
    expectRelative(source.meanSquare ?? NaN, expected.MS, 1e-9);
    expectRelative(source.f ?? NaN, expected.F, 1e-9);
    expectRelative(source.p ?? NaN, expected.p, 1e-9);
  }
  expect(found.residual.degreesOfFreedom).toBe(EXPECTED.Residuals.df);
  expectRelative(found.residual.sumOfSquares, EXPECTED.Residuals.SS, 1e-9);
});
