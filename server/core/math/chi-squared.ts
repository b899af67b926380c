import { lowerGamma, upperGamma } from './gamma.js';
import { invertIncreasingFromZero } from './invert-increasing.js';

/**
 * Distribution function of chi-squared: the share below x.
 *
 * @param degreesOfFreedom over 0
 * @throws RangeError for a negative x or degrees of freedom of 0 or less
 * @example chiSquaredCdf(2, 2) // 1 - Math.exp(-1)
 */
export function chiSquaredCdf(x: number, degreesOfFreedom: number): number {
  return lowerGamma(degreesOfFreedom / 2, x / 2);
}

/**
 * Share of chi-squared above x: the p-value of Cochran's Q among others.
 *
 * @throws RangeError as `chiSquaredCdf`
 * @example chiSquaredUpperTail(2, 2) // Math.exp(-1)
 */
export function chiSquaredUpperTail(x: number, degreesOfFreedom: number): number {
  return upperGamma(degreesOfFreedom / 2, x / 2);
}

/**
 * Quantile of chi-squared: the x below which the share p lies.
 *
 * @param p from 0 (0) to 1 (∞)
 * @throws RangeError outside 0 to 1
 * @example chiSquaredQuantile(0.95, 1) // 3.841458820694126
 */
export function chiSquaredQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p >= 0 && p <= 1)) {
    throw new RangeError(`chiSquaredQuantile requires p from 0 to 1, not ${p}`);
  }
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  return p <= 0.5
    ? invertIncreasingFromZero((x) => chiSquaredCdf(x, degreesOfFreedom), p)
    : invertIncreasingFromZero((x) => -chiSquaredUpperTail(x, degreesOfFreedom), p - 1);
}
