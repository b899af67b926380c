import { chiSquaredQuantile } from '../../math/chi-squared.js';
import type { Interval } from '../../math/bootstrap.js';
import { logGamma } from '../../math/gamma.js';
import { invertIncreasing } from '../../math/invert-increasing.js';
import { zOfLevel } from '../../math/normal.js';
import { unseenInterval } from './unseen-interval.js';

/** What two independent observers saw of the same flocks. */
export interface MatchedFlocks {
  /** Flocks that the first, the second, and both saw. */
  readonly first: number;
  readonly second: number;
  readonly both: number;
}

export interface TwoObserverEstimate {
  /** Flocks that one or the other saw. */
  readonly seen: number;
  /** Lincoln & Petersen: first × second / both; `null` where no flock was seen by both. */
  readonly lincolnPetersen: { readonly value: number; readonly variance: number } | null;
  readonly chapman: {
    readonly value: number;
    readonly variance: number;
    readonly standardError: number;
    /** Log-normal on the flocks that nobody saw: never below those seen. */
    readonly interval: Interval;
    /** Value ± z standard errors, as older texts give it; may lie below the flocks seen. */
    readonly normalInterval: Interval;
  };
  /** Bailey's estimate, for a second sample drawn with replacement. */
  readonly bailey: number;
  /** By the profile of the likelihood; `high` is infinite where no flock was seen by both. */
  readonly profileInterval: Interval;
  /** The chance that the first saw a flock that the second saw, and the other way round. */
  readonly chanceFirst: number | null;
  readonly chanceSecond: number | null;
  /** The chance that a flock was missed by both; the interval is that of the profile. */
  readonly missedByAll: ({ readonly value: number } & Interval) | null;
}

/**
 * How many flocks there were, from those that two independent observers saw alone and together.
 *
 * Methods: Lincoln (1930) and Petersen (1896) with the variance of Sekar & Deming (1949, J. Am. Stat.
 * Assoc. 44:101); Chapman (1951, Univ. Calif. Publ. Stat. 1:131), nearly unbiased, with the variance
 * of Seber (1970, Biometrics 26:13) and a log-normal interval on the unseen (Burnham et al. 1987,
 * Am. Fish. Soc. Monogr. 5:212); Bailey (1951, Biometrika 38:293); profile likelihood after Cormack
 * (1992, Biometrics 48:567).
 *
 * Assumes that the observers did not help each other, that no flock came or went between them, that
 * flocks were matched without error, and that all flocks were as easy to see: where some are easier,
 * the estimate is too low. It is of flocks, not of birds in them.
 *
 * @throws RangeError unless numbers are whole, at least 0, `both` not above either, and one is over 0
 * @example estimateFromTwoObservers({ first: 346, second: 184, both: 49 }).chapman.value // 1282.9
 */
export function estimateFromTwoObservers(
  { first, second, both }: MatchedFlocks,
  level = 0.95,
): TwoObserverEstimate {
  const whole = [first, second, both].every((each) => Number.isInteger(each) && each >= 0);
  if (!whole || both > Math.min(first, second) || first + second === 0) {
    throw new RangeError(
      `estimateFromTwoObservers requires whole numbers, both ≤ first and second, not ${first}, ${second} and ${both}`,
    );
  }
  const seen = first + second - both;
  const value = ((first + 1) * (second + 1)) / (both + 1) - 1;
  const variance =
    ((first + 1) * (second + 1) * (first - both) * (second - both)) /
    ((both + 1) ** 2 * (both + 2));
  const standardError = Math.sqrt(variance);
  const reach = zOfLevel(level) * standardError;
  const profileInterval = profileOf({ first, second, both }, seen, level);
  return {
    seen,
    lincolnPetersen:
      both === 0
        ? null
        : {
            value: (first * second) / both,
            variance: (first ** 2 * second * (second - both)) / both ** 3,
          },
    chapman: {
      value,
      variance,
      standardError,
      interval: unseenInterval(seen, value - seen, variance, level),
      normalInterval: { low: value - reach, high: value + reach },
    },
    bailey: (first * (second + 1)) / (both + 1),
    profileInterval,
    chanceFirst: second === 0 ? null : both / second,
    chanceSecond: first === 0 ? null : both / first,
    missedByAll:
      first === 0 || second === 0
        ? null
        : {
            value: (1 - both / second) * (1 - both / first),
            low: 1 - seen / profileInterval.low,
            high: 1 - seen / profileInterval.high,
          },
  };
}

/** Numbers whose likelihood, with the chances best for each, is not far below the greatest. */
function profileOf({ first, second, both }: MatchedFlocks, seen: number, level: number): Interval {
  const allowed = chiSquaredQuantile(level, 1) / 2;
  // x ln(x / N), also for none.
  const share = (x: number, all: number): number => (x <= 0 ? 0 : x * Math.log(x / all));
  const logLikelihood = (all: number): number =>
    logGamma(all + 1) -
    logGamma(all - seen + 1) +
    share(first, all) +
    share(all - first, all) +
    share(second, all) +
    share(all - second, all);
  // The greatest lies at or just below Lincoln and Petersen's number; with none in common, at infinity.
  if (both === 0) {
    const limit = -first - second + share(first, 1) + share(second, 1);
    const low = belowTop(logLikelihood, limit - allowed, seen, seen + 1);
    return { low, high: Infinity };
  }
  const top = topOf(logLikelihood, seen, Math.max(seen, (first * second) / both));
  const threshold = logLikelihood(top) - allowed;
  let far = 2 * top + 1;
  while (logLikelihood(far) > threshold) far *= 2;
  return {
    low: logLikelihood(seen) >= threshold ? seen : belowTop(logLikelihood, threshold, seen, top),
    high: invertIncreasing((all) => -logLikelihood(all), -threshold, top, far),
  };
}

/** Where a likelihood that rises from `low` on first meets a threshold. */
function belowTop(
  logLikelihood: (all: number) => number,
  threshold: number,
  low: number,
  start: number,
): number {
  if (logLikelihood(low) >= threshold) return low;
  let high = start;
  while (logLikelihood(high) < threshold && high < 1e15) high *= 2;
  return invertIncreasing(logLikelihood, threshold, low, high);
}

/** Place of the greatest value of a function with one top, by golden sections. */
function topOf(of: (x: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  for (let step = 0; step < 100 && high - low > 1e-10 * high; step += 1) {
    const [left, right] = [high - golden * (high - low), low + golden * (high - low)];
    if (of(left) < of(right)) low = left;
    else high = right;
  }
  return (low + high) / 2;
}
