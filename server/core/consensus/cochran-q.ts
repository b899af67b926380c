import { sum } from '../math/sum.js';
import { studiesOf, weightedMean } from './studies.js';

/**
 * Cochran's Q: how far values spread beyond their own errors, as the weighted sum of squares about
 * their weighted mean, Σ wᵢ (yᵢ − ȳ)² with wᵢ = 1/(vᵢ + τ²).
 *
 * Purpose: heterogeneity of observers' ln counts. Under one true value (and τ² = 0) it is
 * chi-squared with k − 1 degrees of freedom. Method: Cochran (1954, Biometrics 10:101); with
 * τ² > 0 it is the generalised Q that Paule & Mandel (1982) set to k − 1. A single value gives 0.
 *
 * @param values ln counts
 * @param variances their known variances, each over 0
 * @param tau2 variance between observers, 0 for Cochran's Q itself
 * @throws RangeError as `studiesOf` says
 * @example cochranQ([1, 3], [1, 1]) // 2
 */
export function cochranQ(
  values: readonly number[],
  variances: readonly number[],
  tau2 = 0,
): number {
  const studies = studiesOf('cochranQ', values, variances, 1, tau2);
  const centre = weightedMean(studies);
  return sum(studies.map(({ value, weight }) => weight * (value - centre) ** 2));
}
