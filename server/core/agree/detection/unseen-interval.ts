import type { Interval } from '../../math/bootstrap.js';
import { zOfLevel } from '../../math/normal.js';

/**
 * Log-normal interval of a number of which part was seen for certain: the unseen part is taken as
 * log-normal (Burnham et al. 1987, Am. Fish. Soc. Monogr. 5:212; Chao 1987, Biometrics 43:783), so
 * that the lower limit is never below what was seen.
 *
 * @param seen at least 0
 * @param unseen its estimate, at least 0; 0 gives an interval of no width
 * @param variance of the estimate
 * @example unseenInterval(10, 0, 0, 0.95) // { low: 10, high: 10 }
 */
export function unseenInterval(
  seen: number,
  unseen: number,
  variance: number,
  level: number,
): Interval {
  if (!(unseen > 0)) return { low: seen, high: seen };
  const factor = Math.exp(zOfLevel(level) * Math.sqrt(Math.log1p(variance / unseen ** 2)));
  return { low: seen + unseen / factor, high: seen + unseen * factor };
}
