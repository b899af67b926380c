import type { Interval } from '../../math/bootstrap.js';
import { unseenInterval } from './unseen-interval.js';

export interface JackknifeNumber {
  readonly seen: number;
  readonly value: number;
  readonly standardError: number;
  /** Log-normal on the unseen. */
  readonly interval: Interval;
}

/**
 * Number there was where some are harder to see than others, by the jackknife over observers (Burnham &
 * Overton 1978, Biometrika 65:625; 1979, Ecology 60:927): how much fewer would have been seen with one
 * observer less (order 1) or two (order 2) tells how many more there are.
 *
 * Purpose: beside `chaoLowerBound`, of which it is no bound: for few observers and low chances it is
 * too low, and no choice of order makes good for it. Never below what was seen. The same formula estimates species from incidences
 * over places. Standard error as theirs: Σ aᵢ² fᵢ − N, with aᵢ what each of fᵢ counts for.
 *
 * @param frequencies how many were seen by one, by two and so on
 * @param observers how many there were, at least as many as `order`
 * @throws RangeError for other numbers
 * @example jackknifeNumber([3, 2], 20, 1).value // 7.85
 */
export function jackknifeNumber(
  frequencies: readonly number[],
  observers: number,
  order: 1 | 2,
  level = 0.95,
): JackknifeNumber {
  const whole = frequencies.every((each) => Number.isInteger(each) && each >= 0);
  if (!whole || !(Number.isInteger(observers) && observers >= order)) {
    throw new RangeError(
      `jackknifeNumber requires whole numbers of at least 0, and ${order} observers or more`,
    );
  }
  const t = observers;
  const more = order === 1 ? [(t - 1) / t] : [(2 * t - 3) / t, -((t - 2) ** 2) / (t * (t - 1))];
  const seen = frequencies.reduce((total, each) => total + each, 0);
  const told = frequencies.reduce((total, each, i) => total + each * (more[i] ?? 0), 0);
  const unseen = Math.max(0, told);
  const squares = frequencies.reduce(
    (total, each, i) => total + each * (1 + (more[i] ?? 0)) ** 2,
    0,
  );
  const variance = Math.max(0, squares - seen - told);
  return {
    seen,
    value: seen + unseen,
    standardError: Math.sqrt(variance),
    interval: unseenInterval(seen, unseen, variance, level),
  };
}
