import type { Interval } from '../math/bootstrap.js';
import { noncentralTQuantile } from '../math/noncentral-t.js';
import { zOfLevel } from '../math/normal.js';
import { studentTQuantile } from '../math/student-t.js';
import { mean, sampleVariance } from '../math/sum.js';

interface EstimateWithInterval extends Interval {
  readonly value: number;
}

export interface LimitsOfAgreement {
  readonly n: number;
  readonly meanDifference: EstimateWithInterval;
  readonly standardDeviation: number;
  /** Of either limit, as older texts have it: for ± Student's t around it. */
  readonly standardErrorOfLimit: number;
  /** Between these limits the middle share of differences is expected. */
  readonly lower: EstimateWithInterval;
  readonly upper: EstimateWithInterval;
}

/**
 * Limits of agreement: between which two observers' differences mostly lie (Bland & Altman 1986,
 * Lancet i:307), mean ± z × standard deviation of the differences.
 *
 * Intervals of the limits are exact, by the noncentral t distribution (Carkeet 2015, Optom. Vis. Sci.
 * 92:e71), each limit by itself; the approximate standard error of a limit stands beside (Bland &
 * Altman 1999, Stat. Methods Med. Res. 8:135). Differences are taken as normal and independent. Differences that
 * are all equal give limits without width.
 *
 * @param x one observer's measurements
 * @param y the other's, of the same things
 * @param share of differences between the limits, such as 0.95
 * @param level of the intervals, such as 0.95
 * @throws RangeError for lists of different length or fewer than two
 */
export function limitsOfAgreement(
  x: readonly number[],
  y: readonly number[],
  share = 0.95,
  level = 0.95,
): LimitsOfAgreement {
  const n = x.length;
  if (y.length !== n || n < 2) {
    throw new RangeError(
      `limitsOfAgreement requires two lists of the same length, at least 2, not ${n} and ${y.length}`,
    );
  }
  const differences = x.map((value, index) => value - (y[index] ?? NaN));
  const centre = mean(differences);
  const standardDeviation = Math.sqrt(sampleVariance(differences));
  const standardError = standardDeviation / Math.sqrt(n);
  const reach = studentTQuantile((1 + level) / 2, n - 1) * standardError;
  const z = zOfLevel(share);
  const noncentrality = z * Math.sqrt(n);
  const near = noncentralTQuantile((1 - level) / 2, n - 1, noncentrality) * standardError;
  const far = noncentralTQuantile((1 + level) / 2, n - 1, noncentrality) * standardError;
  const half = z * standardDeviation;
  return {
    n,
    meanDifference: { value: centre, low: centre - reach, high: centre + reach },
    standardDeviation,
    standardErrorOfLimit: standardDeviation * Math.sqrt(1 / n + z ** 2 / (2 * (n - 1))),
    lower: { value: centre - half, low: centre - far, high: centre - near },
    upper: { value: centre + half, low: centre + near, high: centre + far },
  };
}

export interface RatioLimits {
  readonly n: number;
  readonly meanRatio: EstimateWithInterval;
  readonly lower: EstimateWithInterval;
  readonly upper: EstimateWithInterval;
}

/**
 * Limits of agreement of two observers' counts as ratios x : y, by limits on ln counts transformed
 * back: 0.8 to 1.3 says that most of x's counts lie from 20 % under to 30 % over y's.
 *
 * Things that either counted as 0 have no ratio and are left out; `n` is how many stay.
 *
 * @throws RangeError as `limitsOfAgreement`, counting only what stays
 */
export function ratioLimitsOfAgreement(
  x: readonly number[],
  y: readonly number[],
  share = 0.95,
  level = 0.95,
): RatioLimits {
  const both = x
    .map((one, index) => ({ one, other: y[index] ?? 0 }))
    .filter(({ one, other }) => one > 0 && other > 0);
  const { n, meanDifference, lower, upper } = limitsOfAgreement(
    both.map(({ one }) => Math.log(one)),
    both.map(({ other }) => Math.log(other)),
    share,
    level,
  );
  const back = ({ value, low, high }: EstimateWithInterval): EstimateWithInterval => ({
    value: Math.exp(value),
    low: Math.exp(low),
    high: Math.exp(high),
  });
  return { n, meanRatio: back(meanDifference), lower: back(lower), upper: back(upper) };
}
