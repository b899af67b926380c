import type { Interval } from '../../math/bootstrap.js';
import { inverseOfPositiveDefinite } from '../../math/cholesky.js';
import { mean, squaredDeviations, sum } from '../../math/sum.js';
import { evaluated, type Design, type State } from './huggins-likelihood.js';
import { unseenInterval } from './unseen-interval.js';

/** One flock that at least one observer saw. */
export interface SeenFlock {
  /** Per observer: saw it, did not, or `null` where the observer was not there to see it. */
  readonly seenBy: readonly (boolean | null)[];
  /** Numbers that may make a flock easier to see, the same ones for every flock. */
  readonly covariates: readonly number[];
  /**
   * Further numbers that differ by observer, as the distance from where each stood: a list an
   * observer, the same ones for all; what stands for who was not there is not used.
   */
  readonly ownCovariates?: readonly (readonly number[])[];
  /** What to add up besides flocks, such as birds in it; default 1. */
  readonly amount?: number;
}

export interface Coefficient {
  readonly value: number;
  readonly standardError: number;
}

interface Total extends Interval {
  readonly value: number;
  readonly standardError: number;
}

export type HugginsFit =
  | {
      readonly fitted: true;
      /** On the logit scale: one a observer (or a single one), then one a covariate. */
      readonly intercepts: readonly Coefficient[];
      readonly slopes: readonly Coefficient[];
      readonly logLikelihood: number;
      /** How many flocks there were. */
      readonly flocks: Total;
      /** How much of `amount` there was. */
      readonly amount: Total;
      /** The mean chance that a flock was missed by every observer who was there. */
      readonly missedByAll: { readonly value: number } & Interval;
      readonly n: number;
    }
  | {
      readonly fitted: false;
      /**
       * `too-few`: fewer flocks than there are parameters. `at-the-edge`: the likelihood rises for
       * ever, as where an observer saw everything or no flock was seen by two. `not-told-apart`:
       * covariates that say the same.
       */
      readonly reason: 'too-few' | 'at-the-edge' | 'not-told-apart';
      readonly n: number;
    };

export interface HugginsModel {
  /** Whether every observer has a chance of their own, or all have one. */
  readonly intercepts: 'one' | 'each';
}

const MOST_STEPS = 60;
/** A linear predictor beyond this is a chance of 0 or 1 as far as a double tells. */
const EDGE = 18;

/**
 * Number of flocks by the conditional likelihood of Huggins (1989, Biometrika 76:133; 1991, Biometrics
 * 47:725): the chance that an observer sees a flock depends on the observer and on what the flock is
 * like, fitted to flocks that somebody saw; each then stands for 1 / (its chance of being seen at
 * all) flocks (Horvitz & Thompson 1952).
 *
 * Logit of the chance = intercept + covariates. Newton's method; standard error of the total from the
 * inverse chances and from the coefficients (Huggins 1991, eq. 3); log-normal interval on the unseen.
 *
 * Assumes independent observers, flocks that neither come nor go, matching without error, and that
 * flocks alike in their covariates are as easy to see. Observers need not all have been there.
 *
 * @param flocks each seen by at least one
 * @throws RangeError for a flock that nobody saw, or rows of different length
 */
export function fitHuggins(
  flocks: readonly SeenFlock[],
  { intercepts }: HugginsModel,
  level = 0.95,
): HugginsFit {
  const observers = flocks[0]?.seenBy.length ?? 0;
  const slopes = (flocks[0]?.covariates.length ?? 0) + (flocks[0]?.ownCovariates?.[0]?.length ?? 0);
  for (const flock of flocks) {
    const alike = flock.seenBy.every(
      (_, observer) => covariatesOf(flock, observer).length === slopes,
    );
    if (flock.seenBy.length !== observers || !alike || !flock.seenBy.includes(true)) {
      throw new RangeError('fitHuggins requires flocks that someone saw, all told of alike');
    }
  }
  const n = flocks.length;
  const own = intercepts === 'each' ? observers : 1;
  const size = own + slopes;
  if (n <= size || observers < 2) return { fitted: false, reason: 'too-few', n };
  const scales = scalesOf(flocks, slopes);
  const design = designOf(flocks, own, scales);
  let beta = new Float64Array(size);
  let state = evaluated(design, beta);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const inverse = inverseOfPositiveDefinite(state.information, size);
    if (inverse === null) break;
    const move = timesVector(inverse, state.gradient, size);
    const next = stepAlong(design, beta, state, move);
    const moved = Math.max(
      ...beta.map((value, place) => Math.abs(value - (next.beta[place] ?? 0))),
    );
    beta = next.beta;
    state = next.state;
    if (moved < 1e-10 || state.widest > EDGE) break;
  }
  if (state.widest > EDGE) return { fitted: false, reason: 'at-the-edge', n };
  const covariance = inverseOfPositiveDefinite(state.information, size);
  if (covariance === null || tooAlike(state.information, covariance, size)) {
    return { fitted: false, reason: 'not-told-apart', n };
  }
  return described(flocks, { beta, state, covariance, scales, own, level });
}

interface Scale {
  readonly centre: number;
  readonly spread: number;
}

function covariatesOf({ covariates, ownCovariates }: SeenFlock, observer: number): number[] {
  return [...covariates, ...(ownCovariates?.[observer] ?? [])];
}

/** Covariates are fitted centred and scaled, so that steps are alike in all directions. */
function scalesOf(flocks: readonly SeenFlock[], slopes: number): Scale[] {
  const rows = flocks.flatMap((flock) =>
    flock.seenBy.flatMap((seen, observer) =>
      seen === null ? [] : [covariatesOf(flock, observer)],
    ),
  );
  return Array.from({ length: slopes }, (_, place) => {
    const values = rows.map((row) => row[place] ?? NaN);
    const centre = mean(values);
    const spread = Math.sqrt(squaredDeviations(values) / values.length);
    return { centre, spread: spread > 0 ? spread : 1 };
  });
}

function designOf(flocks: readonly SeenFlock[], own: number, scales: readonly Scale[]): Design {
  const size = own + scales.length;
  const starts = new Int32Array(flocks.length + 1);
  flocks.forEach(({ seenBy }, flock) => {
    const there = seenBy.filter((seen) => seen !== null).length;
    starts[flock + 1] = (starts[flock] ?? 0) + there;
  });
  const rows = starts[flocks.length] ?? 0;
  const seen = new Uint8Array(rows);
  const x = new Float64Array(rows * size);
  let row = 0;
  for (const flock of flocks) {
    flock.seenBy.forEach((saw, observer) => {
      if (saw === null) return;
      seen[row] = saw ? 1 : 0;
      x[row * size + (own === 1 ? 0 : observer)] = 1;
      covariatesOf(flock, observer).forEach((value, place) => {
        const { centre, spread } = scales[place] ?? { centre: 0, spread: 1 };
        x[row * size + own + place] = (value - centre) / spread;
      });
      row += 1;
    });
  }
  return { size, starts, seen, x };
}

/** A Newton step, halved until the likelihood does not fall. */
function stepAlong(
  design: Design,
  beta: Float64Array<ArrayBuffer>,
  before: State,
  move: Float64Array,
): { beta: Float64Array<ArrayBuffer>; state: State } {
  for (let share = 1; ; share /= 2) {
    const next = beta.map((value, place) => value + share * (move[place] ?? 0));
    const state = evaluated(design, next);
    if (state.logLikelihood >= before.logLikelihood - 1e-12 || share < 1e-6) {
      return { beta: next, state };
    }
  }
}

function timesVector(matrix: Float64Array, vector: Float64Array, size: number): Float64Array {
  return vector.map((_, i) => {
    let total = 0;
    for (let j = 0; j < size; j += 1) total += (matrix[i * size + j] ?? 0) * (vector[j] ?? 0);
    return total;
  });
}

/** A coefficient of which the others leave under a millionth of its information. */
function tooAlike(information: Float64Array, covariance: Float64Array, size: number): boolean {
  return Array.from({ length: size }, (_, i) => i * size + i).some(
    (place) => (information[place] ?? 0) * (covariance[place] ?? 0) > 1e8,
  );
}

interface Fitted {
  readonly beta: Float64Array;
  readonly state: State;
  readonly covariance: Float64Array;
  readonly scales: readonly Scale[];
  readonly own: number;
  readonly level: number;
}

function described(flocks: readonly SeenFlock[], fitted: Fitted): HugginsFit {
  const { beta, state, covariance, scales, own } = fitted;
  const n = flocks.length;
  const flocksTotal = totalOf(
    flocks.map(() => 1),
    fitted,
  );
  const amount = totalOf(
    flocks.map((flock) => flock.amount ?? 1),
    fitted,
  );
  /** A combination of coefficients, with its standard error. */
  const combined = (weights: Float64Array): Coefficient => {
    const spread = timesVector(covariance, weights, beta.length);
    const variance = weights.reduce((total, weight, i) => total + weight * (spread[i] ?? 0), 0);
    const value = weights.reduce((total, weight, i) => total + weight * (beta[i] ?? 0), 0);
    return { value, standardError: Math.sqrt(Math.max(0, variance)) };
  };
  const intercepts = Array.from({ length: own }, (_, observer) => {
    const weights = new Float64Array(beta.length);
    weights[observer] = 1;
    scales.forEach(({ centre, spread }, i) => (weights[own + i] = -centre / spread));
    return combined(weights);
  });
  const slopes = scales.map(({ spread }, i) => {
    const weights = new Float64Array(beta.length);
    weights[own + i] = 1 / spread;
    return combined(weights);
  });
  return {
    fitted: true,
    intercepts,
    slopes,
    logLikelihood: state.logLikelihood,
    flocks: flocksTotal,
    amount,
    missedByAll: {
      value: 1 - n / flocksTotal.value,
      low: 1 - n / flocksTotal.low,
      high: 1 - n / flocksTotal.high,
    },
    n,
  };
}

/** Σ amount / chance over flocks seen, with its error and interval. */
function totalOf(amounts: readonly number[], { state, beta, covariance, level }: Fitted): Total {
  const size = beta.length;
  const change = new Float64Array(size);
  let own = 0;
  const parts = Float64Array.from(amounts, (amount, flock) => {
    const [seen, missed] = [state.seen[flock] ?? NaN, state.missed[flock] ?? NaN];
    own += (amount ** 2 * missed) / seen ** 2;
    for (let i = 0; i < size; i += 1) {
      change[i] =
        (change[i] ?? 0) - (amount * missed * (state.slopes[flock * size + i] ?? 0)) / seen ** 2;
    }
    return amount / seen;
  });
  const spread = timesVector(covariance, change, size);
  const variance = own + change.reduce((total, value, i) => total + value * (spread[i] ?? 0), 0);
  const value = sum(parts);
  const known = sum(amounts);
  return {
    value,
    standardError: Math.sqrt(Math.max(0, variance)),
    ...unseenInterval(known, value - known, Math.max(0, variance), level),
  };
}
