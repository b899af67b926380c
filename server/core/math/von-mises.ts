import { logBesselI0 } from './bessel.js';

/**
 * Natural logarithm of the von Mises density, per radian: directions spread about a mean direction
 * as the normal distribution is about a mean (Mardia & Jupp 2000, *Directional Statistics*, 3.5.4).
 *
 * @param degrees from the mean direction, either way, any number of turns
 * @param concentration κ ≥ 0: 0 is every direction alike; when large, about 1 / variance in radians
 * @throws RangeError for κ under 0
 */
export function vonMisesLogDensity(degrees: number, concentration: number): number {
  const radians = (degrees * Math.PI) / 180;
  return concentration * Math.cos(radians) - Math.log(2 * Math.PI) - logBesselI0(concentration);
}
