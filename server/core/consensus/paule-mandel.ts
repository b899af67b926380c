import { sum } from '../math/sum.js';
import { studiesOf, weightedMean } from './studies.js';

const MOST_STEPS = 1000;

/**
 * Variance between observers by Paule & Mandel (1982, J. Res. Natl. Bur. Stand. 87:377): the τ² at
 * which the generalised Q equals its expectation k − 1; 0 where Q is smaller already.
 *
 * Method: Newton steps from 0. Q falls and is convex in τ², so that the steps rise to the root and
 * never pass it; they end when they no longer rise.
 *
 * @param values ln counts, at least two
 * @param variances their known variances, each over 0
 * @throws RangeError as `studiesOf` says
 * @example pauleMandelTau2([1, 3], [1, 1]) // 1
 */
export function pauleMandelTau2(values: readonly number[], variances: readonly number[]): number {
  const degreesOfFreedom = values.length - 1;
  let tau2 = 0;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const studies = studiesOf('pauleMandelTau2', values, variances, 2, tau2);
    const centre = weightedMean(studies);
    const q = sum(studies.map(({ value, weight }) => weight * (value - centre) ** 2));
    if (q <= degreesOfFreedom) return tau2;
    const fall = sum(studies.map(({ value, weight }) => (weight * (value - centre)) ** 2));
    const next = tau2 + (q - degreesOfFreedom) / fall;
    if (next <= tau2) return tau2;
    tau2 = next;
  }
  return tau2;
}
