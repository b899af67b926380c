import { incompleteBeta } from './beta.js';
import { invertIncreasingFromZero } from './invert-increasing.js';

/** Probability beyond t on one side, for t ≥ 0 (Abramowitz & Stegun 1964, 26.7.1). */
function upperTail(t: number, degreesOfFreedom: number): number {
  if (t === Infinity) return 0;
  const square = t * t;
  const total = degreesOfFreedom + square;
  return 0.5 * incompleteBeta(degreesOfFreedom / total, degreesOfFreedom / 2, 0.5, square / total);
}

/**
 * Distribution function of Student's t: the share below t.
 *
 * @param degreesOfFreedom over 0, need not be whole
 * @throws RangeError for degrees of freedom of 0 or less
 * @example studentTCdf(1, 1) // 0.75
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  return t <= 0 ? upperTail(-t, degreesOfFreedom) : 1 - upperTail(t, degreesOfFreedom);
}

/**
 * Quantile of Student's t: the t below which the share p lies.
 *
 * @param p from 0 (−∞) to 1 (∞)
 * @throws RangeError outside 0 to 1, or for degrees of freedom of 0 or less
 * @example studentTQuantile(0.975, 10) // 2.228138851986274
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
  if (!(p >= 0 && p <= 1)) {
    throw new RangeError(`studentTQuantile requires p from 0 to 1, not ${p}`);
  }
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  const size = invertIncreasingFromZero((t) => -upperTail(t, degreesOfFreedom), -tail);
  return p < 0.5 ? -size : size;
}
