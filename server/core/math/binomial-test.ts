import { incompleteBeta } from './beta.js';

/**
 * Exact conditional test that two Poisson counts have the same mean (Przyborowski & Wilenski 1940,
 * Biometrika 31:313).
 *
 * Purpose: is the difference of two small counts of the same birds more than chance? Given their
 * sum n, the larger count is binomial(n, ½) if the means are the same; the p-value is twice the
 * probability of a count at least as large, and never over 1. Two counts of 0 give 1.
 *
 * @param a whole number, at least 0
 * @param b whole number, at least 0
 * @returns the two-sided p-value
 * @throws RangeError for anything but whole numbers of at least 0
 * @example conditionalBinomialTest(2, 8) // 0.109375
 */
export function conditionalBinomialTest(a: number, b: number): number {
  if (!Number.isSafeInteger(a) || !Number.isSafeInteger(b) || a < 0 || b < 0) {
    throw new RangeError(
      `conditionalBinomialTest requires two whole numbers of at least 0, not ${a} and ${b}`,
    );
  }
  const larger = Math.max(a, b);
  const smaller = Math.min(a, b);
  if (larger === smaller) return 1;
  return Math.min(1, 2 * incompleteBeta(0.5, larger, smaller + 1));
}
