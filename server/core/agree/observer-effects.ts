import type { Interval } from '../math/bootstrap.js';
import { inverseOfPositiveDefinite } from '../math/cholesky.js';
import { studentTQuantile } from '../math/student-t.js';
import { UnionFind } from '../math/union-find.js';
import type { Measured } from './measured.js';

export interface ObserverEffect {
  readonly observer: string;
  /** Values that another observer's values of the same cell stand beside. */
  readonly n: number;
  /** Off the mean of the observers of its set, on the scale of the values. */
  readonly effect: number;
  readonly standardError: number;
  readonly interval: Interval;
  /** Observers of one set are linked by shared cells; those of different sets cannot be compared. */
  readonly set: number;
}

export interface ObserverEffects {
  /** Sorted by id; those who never shared a cell are not in it. */
  readonly observers: readonly ObserverEffect[];
  readonly residualVariance: number;
  readonly degreesOfFreedom: number;
}

/**
 * Effects of observers by least squares within cells: value = cell + observer + residual, both fixed
 * (intra-block analysis; Scheffé 1959, The Analysis of Variance, 5.2), effects adding up to 0 in each
 * set of observers that shared cells link.
 *
 * Purpose: how much one observer runs above or below the others on the same birds, whatever cells
 * they got. With ln counts, e to the effect is a ratio. Intervals by Student's t. Assumes independent
 * residuals of one variance.
 *
 * @param measured at most one value an observer and cell
 * @returns `null` where nothing is left to estimate the residual variance from
 */
export function observerEffects(
  measured: readonly Measured[],
  level = 0.95,
): ObserverEffects | null {
  const shared = sharedCells(measured);
  const observers = [
    ...new Set(shared.flatMap((cell) => cell.map(({ observer }) => observer))),
  ].sort();
  const size = observers.length;
  const placeOf = new Map(observers.map((observer, place) => [observer, place]));
  const sets = new UnionFind(size);
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const counts = new Float64Array(size);
  let [values, squares] = [0, 0];
  for (const cell of shared) {
    const centre = cell.reduce((total, { value }) => total + value, 0) / cell.length;
    const places = cell.map(({ observer }) => placeOf.get(observer) ?? 0);
    values += cell.length;
    cell.forEach(({ value }, index) => {
      const i = places[index] ?? 0;
      const deviation = value - centre;
      squares += deviation * deviation;
      right[i] = (right[i] ?? 0) + deviation;
      counts[i] = (counts[i] ?? 0) + 1;
      matrix[i * size + i] = (matrix[i * size + i] ?? 0) + 1;
      for (const j of places) {
        matrix[i * size + j] = (matrix[i * size + j] ?? 0) - 1 / cell.length;
      }
      sets.join(places[0] ?? 0, i);
    });
  }
  const groups = sets.sets();
  const degrees = values - shared.length - size + groups.length;
  if (size < 2 || degrees < 1) return null;
  // One row of ones a set makes the equations solvable and the effects of the set add up to 0.
  for (const group of groups) {
    for (const i of group)
      for (const j of group) matrix[i * size + j] = (matrix[i * size + j] ?? 0) + 1 / group.length;
  }
  const inverse = inverseOfPositiveDefinite(matrix, size);
  if (inverse === null) return null;
  const effects = Float64Array.from({ length: size }, (_, i) =>
    right.reduce((total, value, j) => total + (inverse[i * size + j] ?? 0) * value, 0),
  );
  const explained = effects.reduce((total, effect, i) => total + effect * (right[i] ?? 0), 0);
  const residualVariance = Math.max(0, squares - explained) / degrees;
  const t = studentTQuantile((1 + level) / 2, degrees);
  return {
    observers: observers.map((observer, i) => {
      const effect = effects[i] ?? NaN;
      const set = groups.findIndex((group) => group.includes(i));
      const ofOwnSet = groups[set]?.length ?? 1;
      // What the row of ones added to the inverse is no uncertainty.
      const variance =
        residualVariance * Math.max(0, (inverse[i * size + i] ?? NaN) - 1 / ofOwnSet);
      const standardError = Math.sqrt(variance);
      return {
        observer,
        n: counts[i] ?? 0,
        effect,
        standardError,
        interval: { low: effect - t * standardError, high: effect + t * standardError },
        set: set + 1,
      };
    }),
    residualVariance,
    degreesOfFreedom: degrees,
  };
}

/** Cells with two values or more, in the order of their names. */
function sharedCells(measured: readonly Measured[]): Measured[][] {
  const byCell = new Map<string, Measured[]>();
  for (const each of measured) {
    const cell = byCell.get(each.cell);
    if (cell === undefined) byCell.set(each.cell, [each]);
    else cell.push(each);
  }
  return [...byCell.keys()].sort().flatMap((key) => {
    const cell = byCell.get(key) ?? [];
    return cell.length < 2
      ? []
      : [cell.sort((one, other) => (one.observer < other.observer ? -1 : 1))];
  });
}
