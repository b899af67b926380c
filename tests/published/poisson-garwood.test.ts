/*
 * Source: Garwood F (1936) Biometrika 28:437-442 (table values 3.689, 0.0253 to 5.572, 1.623 to 11.668,
 * 4.795 to 18.390, from memory, agree).
 * Expected: computed with R 4.2.2 (qchisq, poisson.test), re-derived with scipy.
 */
import { expect, it } from 'vitest';
import { poissonInterval } from '../../server/core/math/poisson-interval.js';

const ROWS = [
  { x: 0, conf: 0.95, lower: 0, upper: 3.68887945411 },
  { x: 1, conf: 0.95, lower: 0.0253178079843, upper: 5.57164339094 },
  { x: 2, conf: 0.95, lower: 0.242209278544, upper: 7.22468766772 },
  { x: 5, conf: 0.95, lower: 1.62348639012, upper: 11.6683320793 },
  { x: 10, conf: 0.95, lower: 4.79538869613, upper: 18.390356042 },
  { x: 25, conf: 0.95, lower: 16.1786818478, upper: 36.9049316975 },
  { x: 0, conf: 0.99, lower: 0, upper: 5.29831736655 },
  { x: 1, conf: 0.99, lower: 0.00501254182354, upper: 7.43012950028 },
  { x: 2, conf: 0.99, lower: 0.103494546748, upper: 9.27379208926 },
  { x: 5, conf: 0.99, lower: 1.07792824065, upper: 14.149759411 },
  { x: 10, conf: 0.99, lower: 3.71692213147, upper: 21.3978274997 },
  { x: 25, conf: 0.99, lower: 13.9953744332, upper: 41.0004128514 },
];

it.each(ROWS)('$x counted, level $conf', ({ x, conf, lower, upper }) => {
  const found = poissonInterval(x, conf);
  expect(found.low).toBeCloseTo(lower, 9);
  expect(found.high).toBeCloseTo(upper, 9);
});

it('refuses what is no count', () => {
  expect(() => poissonInterval(-1)).toThrow('whole count');
  expect(() => poissonInterval(1.5)).toThrow('whole count');
});
