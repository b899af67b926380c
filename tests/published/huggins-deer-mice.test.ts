/*
 * 38 deer mice, 6 occasions, with weight, sex and age.
 * Source: Huggins RM (1991) Biometrics 47:725-732; data Otis et al. (1978) Wildl Monogr 62, as in the R
 * package VGAM (deermice); Yee TW, Stoklosa J, Huggins RM (2015) J Stat Softw 65(5).
 * Expected: computed with VGAM 1.1.7 on the published data; numbers, standard errors and conditional
 * log-likelihoods re-derived in Python.
 */
import { describe, expect, it } from 'vitest';
import { fitHuggins, type HugginsModel } from '../../server/core/agree/detection/huggins.js';
import { expectRelative } from '../support/expect-relative.js';

const HISTORIES = [
  '111111',
  '100111',
  '110011',
  '110111',
  '111111',
  '110111',
  '111110',
  '111001',
  '111111',
  '110111',
  '110111',
  '111011',
  '111111',
  '101110',
  '100100',
  '010010',
  '011001',
  '010001',
  '010101',
  '011010',
  '010101',
  '010001',
  '010011',
  '001000',
  '001111',
  '001011',
  '001111',
  '001010',
  '001000',
  '000100',
  '000111',
  '000110',
  '000010',
  '000010',
  '000010',
  '000001',
  '000001',
  '000001',
];
const WEIGHT = [
  12, 15, 15, 15, 13, 21, 11, 15, 14, 14, 13, 22, 14, 11, 10, 23, 7, 8, 19, 13, 5, 20, 12, 6, 22,
  10, 14, 19, 19, 20, 16, 11, 14, 11, 24, 9, 16, 19,
];
const SEX = [
  0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 1, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 1, 1, 1, 0, 1, 0,
  1, 0, 0, 0, 1,
];
const YOUNG = [
  1, 1, 1, 1, 1, 0, 1, 0, 1, 1, 1, 0, 1, 1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 1, 0, 0, 0, 0, 1, 1,
  1, 0, 1, 0, 0,
];
const EXPECTED = {
  M0: {
    coefficients: { '(Intercept)': 0.0795139019203 },
    N: 38.471303611,
    SE: 0.720392042292,
    conditional_loglik: -157.272211605,
  },
  Mt: {
    coefficients: {
      '(Intercept):1': -0.444797049621,
      '(Intercept):2': 0.0832401576199,
      '(Intercept):3': -0.336588430244,
      '(Intercept):4': -0.020968247406,
      '(Intercept):5': 0.623426891375,
      '(Intercept):6': 0.623426891375,
    },
    N: 38.4026028884,
    SE: 0.663494736063,
    conditional_loglik: -152.420468156,
  },
  Mh_weight_sex_age: {
    coefficients: {
      '(Intercept)': -3.046065008,
      weight: 0.155372345905,
      sex: -0.806012018785,
      agey: 1.8993056468,
    },
    N: 39.8507284993,
    SE: 1.71743560084,
    conditional_loglik: -144.873824008,
  },
};

function fitted(covariates: readonly (readonly number[])[], model: HugginsModel) {
  const found = fitHuggins(
    HISTORIES.map((history, mouse) => ({
      seenBy: Array.from(history, (mark) => mark === '1'),
      covariates: covariates.map((values) => values[mouse] ?? NaN),
    })),
    model,
  );
  if (!found.fitted) throw new Error(found.reason);
  return found;
}

describe('conditional likelihood of Huggins (1991) on the deer mice', () => {
  it.each([
    ['one chance', [], 'one', EXPECTED.M0],
    ['a chance an occasion', [], 'each', EXPECTED.Mt],
    ['weight, sex and age', [WEIGHT, SEX, YOUNG], 'one', EXPECTED.Mh_weight_sex_age],
  ] as const)('agrees with VGAM: %s', (_, covariates, intercepts, expected) => {
    const found = fitted(covariates, { intercepts });
    expectRelative(found.flocks.value, expected.N, 1e-7);
    expectRelative(found.flocks.standardError, expected.SE, 1e-3);
    expectRelative(found.logLikelihood, expected.conditional_loglik, 1e-9);
    const coefficients = [...found.intercepts, ...found.slopes].map(({ value }) => value);
    expect(coefficients.length).toBe(Object.values(expected.coefficients).length);
    Object.values(expected.coefficients).forEach((value, place) => {
      expectRelative(coefficients[place] ?? NaN, value, 1e-3);
    });
  });
});
