/*
 * Mallards on 239 quadrats, up to 3 visits.
 * Source: Kery M, Royle JA, Schmid H (2005) Ecol Appl 15:1450-1461, openly distributed data set; model
 * Royle JA (2004) Biometrics 60:108-115. A fit with constant mean and chance, no table of the paper.
 * Expected: computed with R optim on an own likelihood; the log-likelihoods agree with a second
 * implementation in Python (sums up to 200 and 400, Nelder-Mead).
 */
import { expect, it } from 'vitest';
import { fitBinomialMixture } from '../../server/core/agree/detection/binomial-mixture.js';
import { expectRelative } from '../support/expect-relative.js';

/** A quadrat a word, a visit a hexadecimal digit, - for no visit. */
const QUADRATS = (
  '000 000 321 000 303 000 000 000 000 000 000 --- 000 000 000 000 000 101 000 111 000 000 ' +
  '000 000 000 ac7 000 000 000 000 001 110 000 000 000 000 00- 000 000 00- 100 000 000 000 ' +
  '000 000 000 000 001 000 000 010 00- 000 000 000 000 000 000 000 210 000 000 00- 001 000 ' +
  '000 000 --- 444 00- 00- 000 000 000 000 000 000 000 000 000 000 000 000 111 0-- 000 000 ' +
  '000 0-- 100 000 000 000 000 000 000 000 000 000 000 010 00- 000 000 000 000 110 000 000 ' +
  '000 000 111 000 000 000 010 --- 000 000 000 000 110 440 000 000 00- 000 000 000 111 000 ' +
  '311 000 000 000 220 110 000 000 000 101 000 000 000 --- 00- 000 210 00- 000 000 000 433 ' +
  '00- 000 000 020 000 000 000 000 000 000 000 000 00- 000 000 000 000 000 000 000 000 000 ' +
  '333 111 000 000 000 212 00- 000 000 000 000 000 000 010 000 111 000 000 000 111 000 000 ' +
  '00- 011 000 122 200 10- 00- 00- 00- 000 00- 00- 00- 000 101 000 000 000 00- 000 000 00- ' +
  '00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00- 00-'
)
  .split(' ')
  .map((row) => Array.from(row, (digit) => (digit === '-' ? null : Number.parseInt(digit, 16))));

const POISSON = {
  log_lambda: -1.0613014822,
  logit_p: 0.611345060829,
  lambda_: 0.346005197554,
  p: 0.64824756755,
  negative_log_likelihood: 313.945428508,
  se_log_lambda: 0.117854523206,
  se_logit_p: 0.170216456218,
  AIC: 631.890857016,
};
const NEGATIVE_BINOMIAL = {
  log_lambda: -0.753245159567,
  logit_p: -0.101769543527,
  lambda_: 0.470836132475,
  p: 0.474579550383,
  negative_log_likelihood: 259.724088481,
  se_log_lambda: 0.255434135612,
  se_logit_p: 0.321196993355,
  AIC: 525.448176962,
  log_size: -1.97663809918,
  se_log_size: 0.261357784424,
};

it('has the data whole', () => {
  expect(QUADRATS.length).toBe(239);
  expect(QUADRATS.flat().reduce<number>((all, count) => all + (count ?? 0), 0)).toBe(156);
});

it('agrees on the Poisson mixture', () => {
  const found = fitBinomialMixture(QUADRATS, 'poisson');
  expect(found.standing).toBe('sound');
  expect(-(found.logLikelihood ?? NaN)).toBeCloseTo(POISSON.negative_log_likelihood, 6);
  expect(found.aic).toBeCloseTo(POISSON.AIC, 5);
  expectRelative(found.logMean?.value ?? NaN, POISSON.log_lambda, 1e-5);
  expectRelative(found.logitChance?.value ?? NaN, POISSON.logit_p, 1e-5);
  expectRelative(found.mean?.value ?? NaN, POISSON.lambda_, 1e-5);
  expectRelative(found.chance?.value ?? NaN, POISSON.p, 1e-5);
  expectRelative(found.logMean?.standardError ?? NaN, POISSON.se_log_lambda, 1e-3);
  expectRelative(found.logitChance?.standardError ?? NaN, POISSON.se_logit_p, 1e-3);
});

it('agrees on the negative binomial mixture', () => {
  const found = fitBinomialMixture(QUADRATS, 'negative-binomial');
  expect(found.standing).toBe('sound');
  expect(-(found.logLikelihood ?? NaN)).toBeCloseTo(NEGATIVE_BINOMIAL.negative_log_likelihood, 6);
  expect(found.aic).toBeCloseTo(NEGATIVE_BINOMIAL.AIC, 5);
  expectRelative(found.logMean?.value ?? NaN, NEGATIVE_BINOMIAL.log_lambda, 1e-4);
  expectRelative(found.logitChance?.value ?? NaN, NEGATIVE_BINOMIAL.logit_p, 1e-3);
  expectRelative(found.logSize?.value ?? NaN, NEGATIVE_BINOMIAL.log_size, 1e-4);
  expectRelative(found.logMean?.standardError ?? NaN, NEGATIVE_BINOMIAL.se_log_lambda, 5e-3);
  expectRelative(found.logitChance?.standardError ?? NaN, NEGATIVE_BINOMIAL.se_logit_p, 5e-3);
  expectRelative(found.logSize?.standardError ?? NaN, NEGATIVE_BINOMIAL.se_log_size, 5e-3);
});
