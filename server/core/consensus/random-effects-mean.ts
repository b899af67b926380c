import { zOfLevel } from '../math/normal.js';
import { studentTQuantile } from '../math/student-t.js';
import { sum } from '../math/sum.js';
import { cochranQ } from './cochran-q.js';
import { studiesOf, weightedMean } from './studies.js';

export interface WeightedMean {
  readonly mean: number;
  readonly standardError: number;
  readonly low: number;
  readonly high: number;
  /** Shares of the values in the mean, in their order; they add up to 1. */
  readonly weights: readonly number[];
}

/**
 * Random-effects mean: weights 1/(vᵢ + τ²), standard error 1/√Σw, normal interval.
 *
 * Purpose: the consensus of observers' ln counts. Method: DerSimonian & Laird (1986, Control. Clin.
 * Trials 7:177) with whichever τ² is given; τ² = 0 is the fixed-effect mean. One value is its own
 * mean. On ln counts, exponentiate the mean and both limits.
 *
 * @param values ln counts
 * @param variances their known variances, each over 0
 * @param tau2 variance between observers
 * @param level of the interval, such as 0.95
 * @throws RangeError as `studiesOf` says
 * @example randomEffectsMean([1, 3], [1, 1], 1).mean // 2
 */
export function randomEffectsMean(
  values: readonly number[],
  variances: readonly number[],
  tau2: number,
  level = 0.95,
): WeightedMean {
  const studies = studiesOf('randomEffectsMean', values, variances, 1, tau2);
  const total = sum(studies.map(({ weight }) => weight));
  const mean = weightedMean(studies);
  const standardError = 1 / Math.sqrt(total);
  const reach = zOfLevel(level) * standardError;
  return {
    mean,
    standardError,
    low: mean - reach,
    high: mean + reach,
    weights: studies.map(({ weight }) => weight / total),
  };
}

/**
 * The same mean with the error of Hartung & Knapp (2001, Stat. Med. 20:3875): the squared standard
 * error times the generalised Q over k − 1, and Student's t with k − 1 degrees of freedom.
 *
 * Purpose: with two to five observers, as in a waterfowl count, the normal interval is too narrow.
 * Two observers give a very wide interval (t = 12.7), and equal values one of no width.
 *
 * @throws RangeError as `studiesOf` says, with at least two values
 * @example hartungKnappMean([1, 3], [1, 1], 1).standardError // 1
 */
export function hartungKnappMean(
  values: readonly number[],
  variances: readonly number[],
  tau2: number,
  level = 0.95,
): WeightedMean {
  if (values.length < 2) {
    throw new RangeError(`hartungKnappMean requires at least 2 values, not ${values.length}`);
  }
  const plain = randomEffectsMean(values, variances, tau2, level);
  const degreesOfFreedom = values.length - 1;
  const inflation = cochranQ(values, variances, tau2) / degreesOfFreedom;
  const standardError = plain.standardError * Math.sqrt(inflation);
  const reach = studentTQuantile((1 + level) / 2, degreesOfFreedom) * standardError;
  return { ...plain, standardError, low: plain.mean - reach, high: plain.mean + reach };
}
