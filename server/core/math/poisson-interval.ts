import type { Interval } from './bootstrap.js';
import { chiSquaredQuantile } from './chi-squared.js';

/**
 * Exact interval for the mean of a Poisson count (Garwood 1936, Biometrika 28:437), by quantiles of
 * chi-squared: holds at least its level always, hence wide.
 *
 * Purpose: what a count of independent events, such as flocks or ones seen by chance, says of the
 * number to expect. Birds of one flock are not independent events.
 *
 * @param count whole, at least 0
 * @throws RangeError for other counts
 * @example poissonInterval(0, 0.95).high // 3.688879454113936
 */
export function poissonInterval(count: number, level = 0.95): Interval {
  if (!Number.isInteger(count) || count < 0) {
    throw new RangeError(`poissonInterval requires a whole count of at least 0, not ${count}`);
  }
  const tail = (1 - level) / 2;
  return {
    low: count === 0 ? 0 : chiSquaredQuantile(tail, 2 * count) / 2,
    high: chiSquaredQuantile(1 - tail, 2 * count + 2) / 2,
  };
}
