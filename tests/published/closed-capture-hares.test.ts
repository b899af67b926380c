/*
 * 68 snowshoe hares, 6 occasions.
 * Source: Cormack RM (1989) Biometrics 45:395-413; Agresti A (1994) Biometrics 50:494-500; R data
 * Rcapture::hare.
 * Expected: log-linear models fitted with the R package Rcapture 1.4.4; numbers of M0 and Mt agree with
 * the root of the conditional likelihood in Python. Its help quotes N = 81.1, s.e. = 5.7 for Mth
 * Poisson2; version 1.4.4 gives 5.57. Its s.e. of Mbh, 14.594, is not taken: in the derivative with
 * respect to the fourth coefficient it leaves out a factor (with which it is 4.649; without it our
 * covariance gives their 14.5944 too).
 */
import { expect, it, test } from 'vitest';
import { fitHuggins } from '../../server/core/agree/detection/huggins.js';
import type { CaptureModel } from '../../server/core/agree/detection/capture-model.js';
import { chaoLowerBound } from '../../server/core/agree/detection/chao-lower-bound.js';
import { logLinearCapture } from '../../server/core/agree/detection/log-linear-capture.js';
import { expectRelative } from '../support/expect-relative.js';

/** The answers are given to this; R stops a step earlier, so that its standard errors have fewer digits. */
const TOLERANCE = 1e-8;
const ERROR_TOLERANCE = 5e-5;

const HISTORIES = [
  '111111',
  '111111',
  '110001',
  '110010',
  '101100',
  '101010',
  '101000',
  '100111',
  '100100',
  '100100',
  '100010',
  '100010',
  '100001',
  '100000',
  '100000',
  '100000',
  '011111',
  '011101',
  '011101',
  '011011',
  '011001',
  '011001',
  '010111',
  '010101',
  '010101',
  '010101',
  '010100',
  '010100',
  '010100',
  '010011',
  '010010',
  '010010',
  '010010',
  '010001',
  '010000',
  '010000',
  '010000',
  '010000',
  '010000',
  '010000',
  '001101',
  '001011',
  '001001',
  '001001',
  '001000',
  '001000',
  '001000',
  '001000',
  '001000',
  '000111',
  '000110',
  '000101',
  '000101',
  '000101',
  '000101',
  '000100',
  '000100',
  '000100',
  '000011',
  '000011',
  '000010',
  '000010',
  '000010',
  '000010',
  '000001',
  '000001',
  '000001',
  '000001',
];
const EXPECTED: readonly {
  readonly name: string;
  readonly model: CaptureModel;
  readonly N: number;
  readonly se: number;
  readonly deviance: number;
  readonly df: number;
  readonly aic: number;
}[] = [
  {
    name: 'M0',
    model: { chances: 'one' },
    N: 75.4336186293,
    se: 3.45499994182,
    deviance: 68.5162079006,
    df: 61,
    aic: 154.706624875,
  },
  {
    name: 'Mt',
    model: { chances: 'each' },
    N: 75.0662013449,
    se: 3.35233099059,
    deviance: 58.3141590716,
    df: 56,
    aic: 154.504576046,
  },
  {
    name: 'Mh Chao (LB)',
    model: { chances: 'one', differing: 'lower-bound' },
    N: 79.8371212121,
    se: 6.3737649889,
    deviance: 58.0233212465,
    df: 58,
    aic: 150.213738221,
  },
  {
    name: 'Mh Poisson2',
    model: { chances: 'one', differing: 'poisson' },
    N: 81.5270478349,
    se: 5.7114734701,
    deviance: 59.1071646451,
    df: 60,
    aic: 147.297581619,
  },
  {
    name: 'Mh Darroch',
    model: { chances: 'one', differing: 'darroch' },
    N: 90.4023834089,
    se: 11.6252423666,
    deviance: 61.6004316988,
    df: 60,
    aic: 149.790848673,
  },
  {
    name: 'Mh Gamma3.5',
    model: { chances: 'one', differing: 'gamma' },
    N: 100.572744564,
    se: 21.7409973187,
    deviance: 62.7705567065,
    df: 60,
    aic: 150.960973681,
  },
  {
    name: 'Mth Chao (LB)',
    model: { chances: 'each', differing: 'lower-bound' },
    N: 79.5714573883,
    se: 6.25371431709,
    deviance: 47.1150304058,
    df: 52,
    aic: 151.30544738,
  },
  {
    name: 'Mth Poisson2',
    model: { chances: 'each', differing: 'poisson' },
    N: 81.0792814076,
    se: 5.5735507825,
    deviance: 48.136513367,
    df: 55,
    aic: 146.326930341,
  },
  {
    name: 'Mth Darroch',
    model: { chances: 'each', differing: 'darroch' },
    N: 90.4641015069,
    se: 11.6578517978,
    deviance: 50.7057622653,
    df: 55,
    aic: 148.896179239,
  },
  {
    name: 'Mth Gamma3.5',
    model: { chances: 'each', differing: 'gamma' },
    N: 101.553867771,
    se: 22.40460412,
    deviance: 51.9563380296,
    df: 55,
    aic: 150.146755004,
  },
  {
    name: 'Mb',
    model: { chances: 'wary' },
    N: 81.146060522,
    se: 8.26148570829,
    deviance: 67.0267749823,
    df: 60,
    aic: 155.217191956,
  },
  {
    name: 'Mbh',
    model: { chances: 'wary-first-apart' },
    N: 74.1829259219,
    se: 4.648843890318,
    deviance: 63.2568206058,
    df: 59,
    aic: 153.44723758,
  },
];
const SEEN_BY = HISTORIES.map((history) => Array.from(history, (mark) => mark === '1'));

it.each(EXPECTED)('log-linear model $name', ({ model, ...expected }) => {
  const found = logLinearCapture(SEEN_BY, model);
  if (!found.fitted) throw new Error(found.reason);
  expect(found.seen).toBe(68);
  expectRelative(found.value, expected.N, TOLERANCE);
  expectRelative(found.standardError, expected.se, ERROR_TOLERANCE);
  expectRelative(found.deviance, expected.deviance, TOLERANCE);
  expect(found.degreesOfFreedom).toBe(expected.df);
  expectRelative(found.aic, expected.aic, TOLERANCE);
  expect(found.interval.low).toBeGreaterThan(68);
});

it.each([
  ['one', 'M0'],
  ['each', 'Mt'],
] as const)('by conditional likelihood too: intercepts %s', (intercepts, model) => {
  const expected = EXPECTED.find(({ name }) => name === model);
  const hares = SEEN_BY.map((seenBy) => ({ seenBy, covariates: [] }));
  const found = fitHuggins(hares, { intercepts });
  if (!found.fitted) throw new Error(found.reason);
  expectRelative(found.flocks.value, expected?.N ?? NaN, TOLERANCE);
  expectRelative(found.flocks.standardError, expected?.se ?? NaN, TOLERANCE);
});

test("Chao's bound from numbers seen once and twice is near its log-linear form", () => {
  const frequencies = [1, 2, 3, 4, 5, 6].map(
    (times) => SEEN_BY.filter((seenBy) => seenBy.filter(Boolean).length === times).length,
  );
  const found = chaoLowerBound(frequencies, 6);
  const expected = EXPECTED.find(({ name }) => name === 'Mh Chao (LB)');
  expect(Math.abs(found.value - (expected?.N ?? NaN))).toBeLessThan(expected?.se ?? NaN);
});
