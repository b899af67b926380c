import { logGamma } from './gamma.js';
import { integrate } from './gauss-legendre.js';
import { invertIncreasing } from './invert-increasing.js';
import { normalCdf } from './normal.js';

const PANELS = 16;
/** Standard deviations of s beyond which its density is below rounding. */
const REACH = 12;

/**
 * Distribution function of the noncentral t: the share of (Z + δ)/S below t, with Z standard normal
 * and S² chi-squared over its degrees of freedom.
 *
 * Purpose: exact limits for a mean plus a multiple of a standard deviation. Method: Φ(t s − δ)
 * integrated over the density of S in panels of Gauss–Legendre, about 1e-12.
 *
 * @param degreesOfFreedom at least 1
 * @param noncentrality δ; 0 gives Student's t
 * @throws RangeError for degrees of freedom under 1
 * @example noncentralTCdf(0, 10, 0) // 0.5
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  if (!(degreesOfFreedom >= 1)) {
    throw new RangeError(
      `noncentralTCdf requires degrees of freedom of at least 1, not ${degreesOfFreedom}`,
    );
  }
  const half = degreesOfFreedom / 2;
  const logConstant = Math.LN2 + half * Math.log(half) - logGamma(half);
  const weighted = (s: number): number =>
    normalCdf(t * s - noncentrality) *
    Math.exp(logConstant + (degreesOfFreedom - 1) * Math.log(s) - half * s * s);
  const reach = REACH / Math.sqrt(2 * degreesOfFreedom);
  const from = Math.max(0, 1 - reach);
  const width = (1 + reach - from) / PANELS;
  let total = 0;
  for (let panel = 0; panel < PANELS; panel += 1) {
    total += integrate(weighted, from + panel * width, from + (panel + 1) * width);
  }
  return Math.min(1, total);
}

/**
 * Quantile of the noncentral t: the t below which the share p lies.
 *
 * @param p over 0 and under 1
 * @throws RangeError outside these, or for degrees of freedom under 1
 * @example noncentralTQuantile(0.5, 10, 0) // 0
 */
export function noncentralTQuantile(
  p: number,
  degreesOfFreedom: number,
  noncentrality: number,
): number {
  if (!(p > 0 && p < 1)) {
    throw new RangeError(`noncentralTQuantile requires p over 0 and under 1, not ${p}`);
  }
  const cdf = (t: number): number => noncentralTCdf(t, degreesOfFreedom, noncentrality);
  let reach = 1;
  while (cdf(noncentrality - reach) > p || cdf(noncentrality + reach) < p) reach *= 2;
  return invertIncreasing(cdf, p, noncentrality - reach, noncentrality + reach);
}
