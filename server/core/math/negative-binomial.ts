import { incompleteBeta } from './beta.js';
import { lowerGamma, upperGamma } from './gamma.js';

/**
 * A negative binomial distribution of whole numbers with variance mean + mean² / size; a size of
 * infinity is the Poisson distribution.
 */
export interface NegativeBinomial {
  /** Over 0. */
  readonly mean: number;
  /** Over 0, infinity allowed. */
  readonly size: number;
}

/**
 * The chance of `number` or more.
 *
 * A beta tail (Johnson, Kemp & Kotz 2005, Univariate Discrete Distributions, 5.6), for Poisson a
 * gamma tail (4.5), each on the side asked for, so that small chances keep their digits.
 *
 * @param number whole, 0 or more
 * @example chanceOfAtLeast(1, { mean: 2, size: Infinity }) // 1 - Math.exp(-2)
 */
export function chanceOfAtLeast(number: number, { mean, size }: NegativeBinomial): number {
  if (number <= 0) return 1;
  if (size === Infinity) return lowerGamma(number, mean);
  return incompleteBeta(mean / (mean + size), number, size, size / (mean + size));
}

/**
 * The chance of `number` or fewer.
 *
 * @param number whole; below 0 the chance is 0
 * @example chanceOfAtMost(0, { mean: 2, size: Infinity }) // Math.exp(-2)
 */
export function chanceOfAtMost(number: number, { mean, size }: NegativeBinomial): number {
  if (number < 0) return 0;
  if (size === Infinity) return upperGamma(number + 1, mean);
  return incompleteBeta(size / (mean + size), size, number + 1, mean / (mean + size));
}

/** The least number that more than the share `tail` lies at or below. */
export function lowerQuantile(tail: number, distribution: NegativeBinomial): number {
  return leastWhere((number) => chanceOfAtMost(number, distribution) > tail);
}

/** The least number above which no more than the share `tail` lies. */
export function upperQuantile(tail: number, distribution: NegativeBinomial): number {
  return leastWhere((number) => chanceOfAtLeast(number + 1, distribution) <= tail);
}

/** The least whole number from 0 for which a condition holds that holds from some number on. */
function leastWhere(holds: (number: number) => boolean): number {
  if (holds(0)) return 0;
  let below = 0;
  let at = 1;
  while (!holds(at)) {
    below = at;
    at *= 2;
  }
  while (at - below > 1) {
    const middle = Math.floor((below + at) / 2);
    if (holds(middle)) at = middle;
    else below = middle;
  }
  return at;
}
