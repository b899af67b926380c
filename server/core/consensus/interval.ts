import { cochranQ } from './cochran-q.js';
import { derSimonianLairdTau2 } from './der-simonian-laird.js';
import { iSquared } from './i-squared.js';
import type { Interval } from '../math/bootstrap.js';
import { zOfLevel } from '../math/normal.js';
import { studentTQuantile } from '../math/student-t.js';
import { TAIL_DEGREES_OF_FREEDOM, tau2OfGroup, usableVariance } from './between-observers.js';
import { pauleMandelTau2 } from './paule-mandel.js';
import { predictionInterval } from './prediction-interval.js';
import { randomEffectsMean } from './random-effects-mean.js';
import type { Unit } from './units.js';

/** How far the observers of a group differ; every key `null` with under two counts above zero. */
export interface Spread {
  readonly q: number | null;
  /** DerSimonian & Laird 1986. */
  readonly tau2: number | null;
  /** Paule & Mandel 1982. */
  readonly tau2PauleMandel: number | null;
  readonly i2: number | null;
  /** Where one more observer's count would lie, in birds; `null` with under three counts. */
  readonly predicted: Interval | null;
}

/**
 * Cochran's Q, τ² and I² of the ln counts, and the prediction interval of Higgins, Thompson &
 * Spiegelhalter (2009) about their random-effects mean, back-transformed; it has no known counting
 * error of that next observer in it.
 */
export function spreadOf(units: readonly Unit[]): Spread {
  const positive = units.filter((unit) => unit.total > 0);
  if (positive.length < 2) {
    return { q: null, tau2: null, tau2PauleMandel: null, i2: null, predicted: null };
  }
  const logs = positive.map((unit) => Math.log(unit.total));
  const variances = positive.map(usableVariance);
  const q = cochranQ(logs, variances);
  const tau2 = derSimonianLairdTau2(logs, variances);
  return {
    q,
    tau2,
    tau2PauleMandel: pauleMandelTau2(logs, variances),
    i2: iSquared(q, positive.length),
    predicted: positive.length < 3 ? null : predictedOf(logs, variances, tau2),
  };
}

function predictedOf(
  logs: readonly number[],
  variances: readonly number[],
  tau2: number,
): Interval {
  const { mean, standardError } = randomEffectsMean(logs, variances, tau2);
  const { low, high } = predictionInterval(mean, standardError, tau2, 0.95, logs.length - 2);
  return { low: Math.exp(low), high: Math.exp(high) };
}

/**
 * An interval for the birds that were there to be counted, in whole birds: `plainIntervalOf`,
 * rounded outward, and always around the number.
 */
export function intervalOf(
  number: number,
  units: readonly Unit[],
  tau2OfCell: number,
  level = 0.95,
): Interval {
  const { low, high } = plainIntervalOf(number, units, tau2OfCell, level);
  return {
    low: Math.min(number, Math.floor(low + 1e-9)),
    high: Math.max(number, Math.ceil(high - 1e-9)),
  };
}

/**
 * The same before rounding, on the ln scale and back-transformed.
 *
 * Of several counts: the standard error of their mean by the weights 1/(known variance + τ²), with
 * τ² of the cell or the group (`between-observers.ts`), times Student's t. Of one count: its known
 * counting error and the cell's τ², normal. Counts without known error rest on how far they differ
 * alone (DerSimonian & Laird), and span at least from the lowest to the highest, at every level.
 * Where zeros are claims of absence and one was made, the interval reaches down to zero.
 *
 * It cannot know an error that all observers share: birds that nobody saw, or a way of counting
 * that runs low.
 *
 * @param tau2OfCell as `between-observers.ts` finds it for the cell.
 */
export function plainIntervalOf(
  number: number,
  units: readonly Unit[],
  tau2OfCell: number,
  level = 0.95,
): Interval {
  const positive = units.filter((unit) => unit.total > 0);
  if (number === 0 || positive.length === 0) return { low: number, high: number };
  if (positive.every((unit) => unit.logVariance === 0)) {
    return reachedToZero(intervalOfExact(number, positive, level), positive, units);
  }
  const tau2 = tau2OfGroup(positive, tau2OfCell);
  const weights = positive.map((unit) => 1 / (usableVariance(unit) + tau2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const variance = positive.reduce(
    (sum, unit, index) => sum + ((weights[index] ?? 0) / total) ** 2 * (unit.logVariance + tau2),
    0,
  );
  const quantile =
    positive.length === 1
      ? zOfLevel(level)
      : studentTQuantile((1 + level) / 2, TAIL_DEGREES_OF_FREEDOM);
  const factor = Math.exp(quantile * Math.sqrt(variance));
  return reachedToZero({ low: number / factor, high: number * factor }, positive, units);
}

function intervalOfExact(number: number, positive: readonly Unit[], level: number): Interval {
  const between = (spreadOf(positive).tau2 ?? 0) / positive.length;
  const factor = Math.exp(zOfLevel(level) * Math.sqrt(between));
  const totals = positive.map((unit) => unit.total);
  return {
    low: Math.min(number / factor, ...totals),
    high: Math.max(number * factor, ...totals),
  };
}

function reachedToZero(
  interval: Interval,
  positive: readonly Unit[],
  units: readonly Unit[],
): Interval {
  return positive.length < units.length ? { ...interval, low: 0 } : interval;
}
