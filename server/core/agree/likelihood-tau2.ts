import { cochranQ } from '../consensus/cochran-q.js';
import { studiesOf, weightedMean } from '../consensus/studies.js';
import type { Interval } from '../math/bootstrap.js';
import { chiSquaredQuantile } from '../math/chi-squared.js';
import { invertIncreasing, invertIncreasingFromZero } from '../math/invert-increasing.js';
import { sum } from '../math/sum.js';

/** Places, in equal steps of ln τ², where the likelihood is looked at for its highest top. */
const PLACES = 400;
/** Of the smallest variance: a τ² below this share of it is 0 as far as anything tells. */
const SMALLEST = 1e-6;

/**
 * Variance between observers by greatest likelihood of values that are normal about a common mean with
 * variance vᵢ + τ²: `restricted` for the mean that is estimated with it, or `full` (Viechtbauer 2005,
 * J. Educ. Behav. Stat. 30:261).
 *
 * Purpose: to hold the estimates by moments of `server/core/consensus` against. The likelihood can have
 * several tops, so it is looked at all the way first; the highest is then where its slope changes sign,
 * to the last bit. With two values the restricted one is Paule & Mandel's.
 *
 * @param values such as ln counts, at least two
 * @param variances their known variances, each over 0
 * @throws RangeError as `studiesOf` says
 * @example likelihoodTau2([1, 3], [1, 1], 'restricted') // 1
 */
export function likelihoodTau2(
  values: readonly number[],
  variances: readonly number[],
  kind: 'restricted' | 'full',
): number {
  const at = (tau2: number): Likelihood => likelihoodAt(values, variances, tau2, kind);
  const width = Math.max(...values) - Math.min(...values);
  const [least, most] = [Math.min(...variances), Math.max(...variances)];
  // Beyond, the values lie nearer to each other than τ² has them, whatever their weights.
  const end = 2 * width ** 2 + most;
  const start = SMALLEST * least;
  const places = [
    0,
    ...Array.from({ length: PLACES }, (_, i) => start * (end / start) ** (i / (PLACES - 1))),
  ];
  const heights = places.map((tau2) => at(tau2).height);
  const top = heights.indexOf(Math.max(...heights));
  const [low, high] = [places[top - 1] ?? 0, places[top + 1] ?? end];
  if (at(low).slope <= 0) return low;
  return invertIncreasing((tau2) => -at(tau2).slope, 0, low, high);
}

interface Likelihood {
  /** ln likelihood but for a constant, and its slope by τ². */
  readonly height: number;
  readonly slope: number;
}

function likelihoodAt(
  values: readonly number[],
  variances: readonly number[],
  tau2: number,
  kind: 'restricted' | 'full',
): Likelihood {
  const studies = studiesOf('likelihoodTau2', values, variances, 2, tau2);
  const centre = weightedMean(studies);
  const weights = studies.map(({ weight }) => weight);
  const total = sum(weights);
  const squares = sum(weights.map((weight) => weight ** 2));
  const deviations = studies.map(({ value, weight }) => weight * (value - centre) ** 2);
  const restricted = kind === 'restricted';
  return {
    height: (sum(weights.map(Math.log)) - (restricted ? Math.log(total) : 0) - sum(deviations)) / 2,
    slope:
      (sum(deviations.map((each, i) => each * (weights[i] ?? 0))) -
        total +
        (restricted ? squares / total : 0)) /
      2,
  };
}

/**
 * Interval for the variance between observers, the Q-profile of Viechtbauer (2007, Stat. Med. 26:37):
 * the τ² at which the generalised Q equals the quantiles of chi-squared with k − 1 degrees of freedom.
 * Exact for normal values, and very wide for few. Where Q at τ² = 0 is below a quantile, that limit is 0.
 *
 * @throws RangeError as `likelihoodTau2`
 * @example tau2Interval([4, 4], [1, 2]) // { low: 0, high: 0 }
 */
export function tau2Interval(
  values: readonly number[],
  variances: readonly number[],
  level = 0.95,
): Interval {
  studiesOf('tau2Interval', values, variances, 2);
  const degreesOfFreedom = values.length - 1;
  const where = (share: number): number => {
    const wanted = chiSquaredQuantile(share, degreesOfFreedom);
    if (cochranQ(values, variances) <= wanted) return 0;
    return invertIncreasingFromZero((tau2) => -cochranQ(values, variances, tau2), -wanted);
  };
  return { low: where((1 + level) / 2), high: where((1 - level) / 2) };
}
