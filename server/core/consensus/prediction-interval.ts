import type { Interval } from '../math/bootstrap.js';
import { zOfLevel } from '../math/normal.js';
import { studentTQuantile } from '../math/student-t.js';

/**
 * Where one more observer's value would lie: mean ± q √(τ² + se²).
 *
 * Method: Higgins, Thompson & Spiegelhalter (2009, J. R. Stat. Soc. A 172:137), who take q from
 * Student's t with k − 2 degrees of freedom; `null` degrees of freedom take the normal quantile,
 * which is all that two values allow.
 *
 * @param mean of the values, such as a mean of ln counts
 * @param standardError of that mean, at least 0
 * @param tau2 variance between observers, at least 0
 * @throws RangeError for a level outside 0 to 1
 * @example predictionInterval(2, 0, 1, 0.95).high // 3.959963984540054
 */
export function predictionInterval(
  mean: number,
  standardError: number,
  tau2: number,
  level = 0.95,
  degreesOfFreedom: number | null = null,
): Interval {
  const multiplier =
    degreesOfFreedom === null
      ? zOfLevel(level)
      : studentTQuantile((1 + level) / 2, degreesOfFreedom);
  const reach = multiplier * Math.sqrt(tau2 + standardError ** 2);
  return { low: mean - reach, high: mean + reach };
}
