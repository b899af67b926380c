import type { Interval } from '../math/bootstrap.js';
import { inverseOfPositiveDefinite } from '../math/cholesky.js';
import { chiSquaredQuantile } from '../math/chi-squared.js';
import { derivativesOf } from '../math/derivatives.js';
import { minimise } from '../math/minimise.js';
import type { Measured } from './measured.js';
import { observerEffects, type ObserverEffect } from './observer-effects.js';
import { RestrictedLikelihood } from './restricted-likelihood.js';

export interface Component {
  readonly variance: number;
  /** `null` where the estimate is 0 or data say too little. */
  readonly standardError: number | null;
  /** Satterthwaite's, for the variance; `null` as the error. */
  readonly interval: Interval | null;
}

export interface TwoWayModel {
  readonly n: number;
  readonly cells: number;
  readonly betweenCells: Component;
  readonly betweenObservers: Component;
  readonly residual: Component;
  readonly restrictedLogLikelihood: number;
  readonly observers: readonly ObserverEffect[];
}

/** Below this share of all variance what is left within cells is rounding. */
const NOTHING = 1e-20;
/** With fewer degrees of freedom than one an interval spans all powers of ten. */
const FEWEST_DEGREES = 1;

/**
 * Two-way model of measurements by several observers: value = mean + cell + observer + residual, by
 * restricted maximum likelihood (Patterson & Thompson 1971, Biometrika 58:545), gaps allowed.
 *
 * Purpose: how much of the spread of ln counts is between flocks, between observers, and neither. All
 * three are variances of effects drawn at random; with balanced data they are those of mean squares
 * (unless one of these is below 0: here it is then 0). Effects of the observers themselves are by
 * least squares within cells (`observerEffects`), so that it does not matter who got the large flocks.
 * Intervals of variances are Satterthwaite's (1946, Biometrics Bull. 2:110) from the curvature of the
 * likelihood.
 *
 * Assumes effects independent and about normal, and one residual variance. Cells are taken out of the
 * equations in closed form, so that time grows with the number of values, and with the cube of the
 * number of observers.
 *
 * @param measured at most one value an observer and cell
 * @returns `null` with fewer than three cells seen by two, or fewer than two observers, or where
 * nothing varies within cells
 * @throws RangeError for two values of one observer and cell
 */
export function twoWayModel(measured: readonly Measured[], level = 0.95): TwoWayModel | null {
  const likelihood = new RestrictedLikelihood(measured);
  if (likelihood.sharedCells < 3 || likelihood.observers.length < 2) return null;
  const effects = observerEffects(measured, level);
  const nothing = NOTHING * Math.max(likelihood.spread, NOTHING);
  if (effects === null || effects.residualVariance <= nothing) return null;
  // Roots of the ratios to the residual variance: 0 is then an ordinary place, not an edge.
  const deviance = ([cells = NaN, observers = NaN]: readonly number[]): number =>
    likelihood.deviance(cells * cells, observers * observers);
  const start = [Math.sqrt(Math.max(1, likelihood.spread / effects.residualVariance)), 0.5];
  const best = minimise(deviance, start, 0.5);
  const [rootCells = 0, rootObservers = 0] = best.at;
  const ratioOf = (root: number): number => (Math.abs(root) < 1e-4 ? 0 : root * root);
  const ratios = [ratioOf(rootCells), ratioOf(rootObservers)] as const;
  const residual = likelihood.residualVariance(...ratios);
  const components = componentsOf(likelihood, ratios, residual, level);
  return {
    n: measured.length,
    cells: likelihood.cells,
    ...components,
    restrictedLogLikelihood: -best.value / 2,
    observers: effects.observers,
  };
}

/** Variances with the errors that the curvature of the likelihood gives; those at 0 have none. */
function componentsOf(
  likelihood: RestrictedLikelihood,
  [cells, observers]: readonly [number, number],
  residual: number,
  level: number,
): Pick<TwoWayModel, 'betweenCells' | 'betweenObservers' | 'residual'> {
  const variances = [cells * residual, observers * residual, residual];
  const open = variances.flatMap((variance, place) => (variance > 0 ? [place] : []));
  // On the log scale, so that one step fits all.
  const halfDeviance = (logs: readonly number[]): number => {
    const at = [...variances];
    open.forEach((place, index) => (at[place] = Math.exp(logs[index] ?? NaN)));
    const [ofCells = 0, ofObservers = 0, ofResidual = NaN] = at;
    return likelihood.devianceAt(ofCells, ofObservers, ofResidual) / 2;
  };
  const { hessian } = derivativesOf(
    halfDeviance,
    open.map((place) => Math.log(variances[place] ?? NaN)),
  );
  const covariance = inverseOfPositiveDefinite(hessian, open.length);
  const component = (place: number): Component => {
    const variance = variances[place] ?? NaN;
    const index = open.indexOf(place);
    if (index < 0 || covariance === null) return { variance, standardError: null, interval: null };
    const relative = Math.sqrt(covariance[index * open.length + index] ?? NaN);
    const degrees = 2 / relative ** 2;
    return {
      variance,
      standardError: relative * variance,
      interval:
        degrees >= FEWEST_DEGREES
          ? {
              low: (degrees * variance) / chiSquaredQuantile((1 + level) / 2, degrees),
              high: (degrees * variance) / chiSquaredQuantile((1 - level) / 2, degrees),
            }
          : null,
    };
  };
  return {
    betweenCells: component(0),
    betweenObservers: component(1),
    residual: component(2),
  };
}
