import { describe, expect, it } from 'vitest';
import { betaQuantile, incompleteBeta } from '../../../server/core/math/beta.js';
import {
  chiSquaredCdf,
  chiSquaredQuantile,
  chiSquaredUpperTail,
} from '../../../server/core/math/chi-squared.js';
import { fCdf, fQuantile, fUpperTail } from '../../../server/core/math/f-distribution.js';
import { devianceTerm, logGamma, lowerGamma, upperGamma } from '../../../server/core/math/gamma.js';
import { normalCdf, normalQuantile, zOfTwoSidedP } from '../../../server/core/math/normal.js';
import { studentTCdf, studentTQuantile } from '../../../server/core/math/student-t.js';
import * as published from '../../published/distributions.js';
import { expectRelative } from '../../support/expect-relative.js';

const TOLERANCE = 1e-12;

describe('distribution functions agree with mpmath', () => {
  it.each(published.LOG_GAMMA)('logGamma(%d)', (x, expected) => {
    expectRelative(logGamma(x), expected, TOLERANCE);
  });
  it.each(published.NORMAL)('normalCdf(%d)', (z, expected) => {
    expectRelative(normalCdf(z), expected, TOLERANCE);
  });
  it.each(published.LOWER_GAMMA)('incomplete gamma of %d, %d', (a, x, lower, upper) => {
    expectRelative(lowerGamma(a, x), lower, TOLERANCE);
    expectRelative(upperGamma(a, x), upper, TOLERANCE);
  });
  it.each(published.INCOMPLETE_BETA)('incompleteBeta(%d, %d, %d)', (x, a, b, expected) => {
    expectRelative(incompleteBeta(x, a, b), expected, TOLERANCE);
  });
  it.each(published.STUDENT_T)('studentTCdf(%d, %d)', (t, degrees, expected) => {
    expectRelative(studentTCdf(t, degrees), expected, TOLERANCE);
  });
  it.each(published.STUDENT_T_QUANTILES)('studentTQuantile(%d, %d)', (p, degrees, expected) => {
    expectRelative(studentTQuantile(p, degrees), expected, TOLERANCE);
  });
  it.each(published.CHI_SQUARED)('chi-squared of %d, %d', (x, degrees, lower, upper) => {
    expectRelative(chiSquaredCdf(x, degrees), lower, TOLERANCE);
    expectRelative(chiSquaredUpperTail(x, degrees), upper, TOLERANCE);
  });
  it.each(published.CHI_SQUARED_QUANTILES)('chiSquaredQuantile(%d, %d)', (p, degrees, expected) => {
    expectRelative(chiSquaredQuantile(p, degrees), expected, TOLERANCE);
  });
  it.each(published.F_DISTRIBUTION)('F of %d, %d, %d', (x, m, n, lower, upper) => {
    expectRelative(fCdf(x, m, n), lower, TOLERANCE);
    expectRelative(fUpperTail(x, m, n), upper, TOLERANCE);
  });
  it.each(published.F_QUANTILES)('fQuantile(%d, %d, %d)', (p, m, n, expected) => {
    expectRelative(fQuantile(p, m, n), expected, TOLERANCE);
  });
});

describe('identities', () => {
  it('quantiles undo distribution functions', () => {
    for (const p of [1e-300, 1e-30, 1e-12, 0.001, 0.2, 0.5, 0.77, 0.999]) {
      expectRelative(normalCdf(normalQuantile(p)), p, TOLERANCE);
      expectRelative(studentTCdf(studentTQuantile(p, 3.5), 3.5), p, TOLERANCE);
      expectRelative(chiSquaredCdf(chiSquaredQuantile(p, 7), 7), p, TOLERANCE);
      expectRelative(fCdf(fQuantile(p, 4, 9), 4, 9), p, TOLERANCE);
      expectRelative(incompleteBeta(betaQuantile(p, 2.5, 8), 2.5, 8), p, TOLERANCE);
    }
  });

  it('the square of Student t is F with 1 degree of freedom, and of z chi-squared', () => {
    for (const t of [0.1, 1, 2.7, 6]) {
      expectRelative(fUpperTail(t * t, 1, 9), 2 * studentTCdf(-t, 9), TOLERANCE);
      expectRelative(chiSquaredUpperTail(t * t, 1), 2 * normalCdf(-t), TOLERANCE);
    }
  });

  it('the deviance term does not jump where its formula changes', () => {
    for (const m of [0.818_18, 0.818_19, 1.222_2, 1.222_3]) {
      expectRelative(devianceTerm(1, m), Math.log(1 / m) + m - 1, 1e-12);
    }
  });

  it('a two-sided p maps to the z of both tails', () => {
    expectRelative(zOfTwoSidedP(2 * normalCdf(-3)), 3, TOLERANCE);
    expect(zOfTwoSidedP(1)).toBe(0);
    expect(zOfTwoSidedP(0)).toBe(Infinity);
  });

  it('refuses arguments outside the functions', () => {
    expect(() => lowerGamma(0, 1)).toThrow(RangeError);
    expect(() => lowerGamma(1, NaN)).toThrow(RangeError);
    expect(() => incompleteBeta(1.2, 1, 1)).toThrow(RangeError);
    expect(() => normalQuantile(-0.1)).toThrow(RangeError);
    expect(() => studentTQuantile(0.5001, 0)).toThrow(RangeError);
    expect(() => fCdf(-1, 2, 3)).toThrow(RangeError);
  });
});
