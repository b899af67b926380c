import { mean, sampleVariance } from '../math/sum.js';
import { median } from './median.js';

/** Makes the median absolute deviation of normal data their standard deviation (ISO 13528). */
const DEVIATION_FACTOR = 1.483;
/** Values are pulled in to this many standard deviations. */
const REACH = 1.5;
/** Makes good what pulling in takes off the standard deviation (ISO 13528). */
const WINSORISING_FACTOR = 1.134;
/** Relative change at which the iteration has settled; far below the standard's third digit. */
const SETTLED = 1e-13;
const MOST_STEPS = 10_000;

export interface RobustMean {
  readonly mean: number;
  readonly standardDeviation: number;
  /** 1.25 s∗ ÷ √n, the standard uncertainty that ISO 13528 gives to the robust mean. */
  readonly standardError: number;
}

/**
 * Robust mean and standard deviation by Algorithm A (ISO 13528:2015 annex C.3; ISO 5725-5:1998).
 *
 * Purpose: a consensus that one wild count moves little, without leaving any count out. Method:
 * from the median and the scaled median absolute deviation, values further than 1.5 s* from x* are
 * pulled in to there, and mean and 1.134 × standard deviation taken again until they settle.
 *
 * Where more than half of the values are equal the first s* is 0; the standard (from memory) then
 * allows the plain standard deviation as a start, which is done. All equal: that value, with 0.
 * One value: that value, with 0.
 *
 * @param values at least one
 * @throws RangeError for an empty list
 * @example robustMean([5, 5, 5]) // { mean: 5, standardDeviation: 0, standardError: 0 }
 */
export function robustMean(values: readonly number[]): RobustMean {
  let centre = median(values);
  let spread = DEVIATION_FACTOR * median(values.map((value) => Math.abs(value - centre)));
  if (spread === 0 && values.length > 1) spread = Math.sqrt(sampleVariance(values));
  for (let step = 0; step < MOST_STEPS && spread > 0; step += 1) {
    const low = centre - REACH * spread;
    const high = centre + REACH * spread;
    const pulledIn = values.map((value) => Math.min(Math.max(value, low), high));
    const nextCentre = mean(pulledIn);
    const nextSpread = WINSORISING_FACTOR * Math.sqrt(sampleVariance(pulledIn));
    const settled =
      Math.abs(nextCentre - centre) <= SETTLED * spread &&
      Math.abs(nextSpread - spread) <= SETTLED * spread;
    centre = nextCentre;
    spread = nextSpread;
    if (settled) break;
  }
  return {
    mean: centre,
    standardDeviation: spread,
    standardError: (1.25 * spread) / Math.sqrt(values.length),
  };
}
