import { inverseOfPositiveDefinite } from './cholesky.js';
import { devianceTerm, logGamma } from './gamma.js';
import { sum } from './sum.js';

export type PoissonRegression =
  | {
      readonly fitted: true;
      readonly coefficients: readonly number[];
      /** Rows one after another. */
      readonly covariance: Float64Array;
      readonly deviance: number;
      readonly logLikelihood: number;
    }
  | {
      readonly fitted: false;
      /**
       * `not-told-apart`: columns that say the same. `at-the-edge`: the likelihood rises for ever, as
       * where a column's counts are all 0.
       */
      readonly reason: 'not-told-apart' | 'at-the-edge';
    };

const MOST_STEPS = 100;
const SMALLEST_SHARE = 1e-9;
/** Relative change of the deviance at which Newton's steps have settled. */
const SETTLED = 1e-13;
/** Standard error of a coefficient, times the largest number of its column, that says it has no end. */
const ENDLESS = 1e4;

/**
 * Counts that are Poisson with ln mean = design × coefficients, by greatest likelihood: Newton's
 * method, which for the natural link is Fisher's scoring (McCullagh & Nelder 1989, Generalized
 * Linear Models, 2.5), each step halved until the deviance does not rise.
 *
 * @param design a row a count; all rows of the same length
 * @param counts whole and at least 0, as many as rows
 * @throws RangeError for rows of different length, fewer counts than columns, or no whole counts
 * @example poissonRegression([[1], [1]], [2, 4]).coefficients[0] // Math.log(3)
 */
export function poissonRegression(
  design: readonly (readonly number[])[],
  counts: readonly number[],
): PoissonRegression {
  const size = design[0]?.length ?? 0;
  if (
    design.length !== counts.length ||
    counts.length < Math.max(1, size) ||
    !design.every((row) => row.length === size) ||
    !counts.every((count) => Number.isInteger(count) && count >= 0)
  ) {
    throw new RangeError(
      'poissonRegression requires a row of the design for each whole count, at least as many as columns',
    );
  }
  // The first step goes from the counts themselves, as if each were its own mean.
  let state: State = {
    predictors: counts.map((count) => Math.log(count + 0.5)),
    coefficients: [],
    deviance: Infinity,
  };
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const means = state.predictors.map(Math.exp);
    const covariance = inverseOfPositiveDefinite(informationOf(design, means), size);
    if (covariance === null) {
      return { fitted: false, reason: step === 0 ? 'not-told-apart' : 'at-the-edge' };
    }
    const working = means.map(
      (mean, i) => mean * (state.predictors[i] ?? 0) + (counts[i] ?? 0) - mean,
    );
    const next = stepTowards(
      design,
      counts,
      state,
      product(covariance, columnSums(design, working)),
    );
    const settled = state.deviance - next.deviance <= SETTLED * (next.deviance + 1);
    state = next;
    if (settled) break;
  }
  return described(design, counts, state);
}

function described(
  design: readonly (readonly number[])[],
  counts: readonly number[],
  { predictors, coefficients, deviance }: State,
): PoissonRegression {
  const information = informationOf(design, predictors.map(Math.exp));
  const covariance = inverseOfPositiveDefinite(information, coefficients.length);
  if (covariance === null || isEndless(design, covariance)) {
    return { fitted: false, reason: 'at-the-edge' };
  }
  const logLikelihood = logLikelihoodOf(counts, predictors);
  return { fitted: true, coefficients, covariance, deviance, logLikelihood };
}

interface State {
  readonly predictors: readonly number[];
  readonly coefficients: readonly number[];
  readonly deviance: number;
}

/** As far towards `aim` as the deviance falls: all the way, half, a quarter and so on. */
function stepTowards(
  design: readonly (readonly number[])[],
  counts: readonly number[],
  state: State,
  aim: readonly number[],
): State {
  const from = state.coefficients.length === 0 ? aim : state.coefficients;
  for (let share = 1; share > SMALLEST_SHARE; share /= 2) {
    const coefficients = aim.map((to, i) => to * share + (from[i] ?? 0) * (1 - share));
    const predictors = design.map((row) => sum(row.map((x, i) => x * (coefficients[i] ?? 0))));
    const deviance =
      2 * sum(counts.map((count, i) => devianceTerm(count, Math.exp(predictors[i] ?? 0))));
    if (deviance <= state.deviance) return { predictors, coefficients, deviance };
  }
  return state;
}

/** Whether a coefficient may be anything: the likelihood is level, or rises for ever. */
function isEndless(design: readonly (readonly number[])[], covariance: Float64Array): boolean {
  const size = design[0]?.length ?? 0;
  return (design[0] ?? []).some((_, column) => {
    const widest = Math.max(...design.map((row) => Math.abs(row[column] ?? 0)));
    return Math.sqrt(covariance[column * size + column] ?? NaN) * widest > ENDLESS;
  });
}

function informationOf(
  design: readonly (readonly number[])[],
  means: readonly number[],
): Float64Array {
  const size = design[0]?.length ?? 0;
  const information = new Float64Array(size * size);
  design.forEach((row, i) => {
    const mean = means[i] ?? 0;
    row.forEach((x, a) => {
      if (x === 0) return;
      row.forEach((y, b) => {
        information[a * size + b] = (information[a * size + b] ?? 0) + mean * x * y;
      });
    });
  });
  return information;
}

function columnSums(design: readonly (readonly number[])[], weights: readonly number[]): number[] {
  return (design[0] ?? []).map((_, column) =>
    sum(design.map((row, i) => (row[column] ?? 0) * (weights[i] ?? 0))),
  );
}

function product(matrix: Float64Array, vector: readonly number[]): number[] {
  const size = vector.length;
  return vector.map((_, i) => sum(vector.map((value, j) => (matrix[i * size + j] ?? 0) * value)));
}

function logLikelihoodOf(counts: readonly number[], predictors: readonly number[]): number {
  return sum(
    counts.map((count, i) => {
      const predictor = predictors[i] ?? 0;
      return count * predictor - Math.exp(predictor) - logGamma(count + 1);
    }),
  );
}
