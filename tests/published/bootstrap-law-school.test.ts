/*
 * Correlation of test scores and grades of 15 law schools.
 * Source: Efron B, Tibshirani RJ (1993) An Introduction to the Bootstrap, Table 3.1. Data from memory;
 * correlation .776 and jackknife error .143 agree with print.
 * Expected: estimate, jackknife and acceleration re-derived in Python; the rest by the R package boot
 * 1.3.28.1 with 50,000 draws, which another generator meets only broadly: within 0.02.
 */
import { expect, test } from 'vitest';
import { bootstrapEstimate } from '../../server/core/math/bootstrap.js';
import { expectRelative } from '../support/expect-relative.js';
import { GPA, LAW_SCHOOL, LSAT } from './law-school.js';

const JACKKNIFE_BIAS = -0.00647362304592;
const BOOTSTRAP_BIAS = -0.00534447289719;

function correlation(drawn: readonly (readonly [number, number])[]): number | null {
  let [x, y, xx, yy, xy] = [0, 0, 0, 0, 0];
  for (const [score, grade] of drawn) {
    x += score;
    y += grade;
    xx += score * score;
    yy += grade * grade;
    xy += score * grade;
  }
  const n = drawn.length;
  const squares = (xx - (x * x) / n) * (yy - (y * y) / n);
  return squares <= 1e-12 ? null : (xy - (x * y) / n) / Math.sqrt(squares);
}

const schools = LSAT.map((score, school) => [score, GPA[school] ?? NaN] as const);

test('bootstrap and jackknife of the law school correlation', () => {
  const options = { seed: 1993, resamples: 20_000 };
  const found = bootstrapEstimate(schools, correlation, options);
  expectRelative(found.value ?? NaN, LAW_SCHOOL.estimate, 1e-9);
  expectRelative(found.jackknife?.standardError ?? NaN, LAW_SCHOOL.jackknife_se, 1e-9);
  expectRelative(found.jackknife?.bias ?? NaN, JACKKNIFE_BIAS, 1e-8);
  const broadly = (value: number | undefined | null, expected: number): void => {
    expect(Math.abs((value ?? NaN) - expected)).toBeLessThan(0.02);
  };
  broadly(found.standardError, LAW_SCHOOL.boot_se);
  broadly(found.bias, BOOTSTRAP_BIAS);
  broadly(found.percentile?.low, LAW_SCHOOL.percentile95[0]);
  broadly(found.percentile?.high, LAW_SCHOOL.percentile95[1]);
  broadly(found.bca?.low, LAW_SCHOOL.bca95[0]);
  broadly(found.bca?.high, LAW_SCHOOL.bca95[1]);
  const at90 = bootstrapEstimate(schools, correlation, { ...options, level: 0.9 });
  broadly(at90.percentile?.low, LAW_SCHOOL.percentile90[0]);
  broadly(at90.bca?.high, LAW_SCHOOL.bca90[1]);
  expect(bootstrapEstimate(schools, correlation, options)).toEqual(found);
});

test('says nothing where units or draws do not define it', () => {
  const nothing = { standardError: null, percentile: null, bca: null, jackknife: null };
  const options = { seed: 1, resamples: 99 };
  expect(bootstrapEstimate([], correlation, options)).toMatchObject({ value: null, ...nothing });
  const one = schools.slice(0, 1);
  expect(bootstrapEstimate(one, () => 5, options)).toMatchObject({ value: 5, ...nothing, n: 1 });
  // Half of the draws of two schools are one school twice.
  const two = bootstrapEstimate(schools.slice(0, 2), correlation, options);
  expect(two).toMatchObject(nothing);
  expect(two.value).toBeCloseTo(-1, 9);
  expect(two.replicates).toBeLessThan(80);
});
