import { quantile } from '../math/quantile.js';

/**
 * Median: the middle value, or the mean of the two middle ones.
 *
 * @throws RangeError for an empty list
 * @example median([3, 1, 10, 2]) // 2.5
 */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}
