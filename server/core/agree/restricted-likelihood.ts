import { mean, sum } from '../math/sum.js';
import type { Measured } from './measured.js';

/** Sums over the cells that have the same number of values: all that the likelihood needs of them. */
interface CellsOfSize {
  readonly size: number;
  cells: number;
  /** Σ s sᵀ over cells, s = which observers counted there, with the number of values first. */
  readonly products: Float64Array;
  /** Σ s t, t = the sum of the cell's values. */
  readonly withSums: Float64Array;
  sumsSquared: number;
}

/**
 * Restricted likelihood of the two-way model (see `twoWayModel`) as a function of its variances, from
 * sums that are taken once.
 *
 * With cells of variance γ times the residual, the inverse covariance within a cell of n values is
 * I − γ/(1 + nγ) 11ᵀ, the same for all cells of n: what is left are equations in the mean and the
 * observers alone (absorption; Henderson 1984, Applications of Linear Models in Animal Breeding).
 */
export class RestrictedLikelihood {
  /** By how many values and which sum they have, so that their names change no bit. */
  readonly observers: readonly string[];
  readonly cells: number;
  /** Cells that two or more counted. */
  readonly sharedCells: number;
  /** Variance of all values. */
  readonly spread: number;
  private readonly n: number;
  private readonly width: number;
  private readonly bySize: readonly CellsOfSize[];
  private readonly counts: Float64Array;
  private readonly sums: Float64Array;
  private readonly squares: number;

  constructor(measured: readonly Measured[]) {
    const centre = measured.length === 0 ? 0 : mean(measured.map(({ value }) => value));
    this.n = measured.length;
    this.observers = byTheirData(measured);
    this.width = this.observers.length + 1;
    const placeOf = new Map(this.observers.map((observer, place) => [observer, place + 1]));
    this.counts = new Float64Array(this.width);
    this.sums = new Float64Array(this.width);
    const byCell = new Map<string, [place: number, deviation: number][]>();
    for (const { cell, observer, value } of measured) {
      const entry: [number, number] = [placeOf.get(observer) ?? 0, value - centre];
      const entries = byCell.get(cell);
      if (entries === undefined) byCell.set(cell, [entry]);
      else entries.push(entry);
    }
    const cells = [...byCell.keys()].sort().map((cell) => {
      const entries = (byCell.get(cell) ?? []).sort(([one], [other]) => one - other);
      const twice = entries.find(([place], index) => place === entries[index + 1]?.[0]);
      if (twice !== undefined) {
        const observer = this.observers[twice[0] - 1] ?? '';
        throw new RangeError(`twoWayModel requires one value of ${observer} for ${cell}, not two`);
      }
      return entries;
    });
    let squares = 0;
    for (const entries of cells) {
      for (const [place, deviation] of entries) {
        squares += deviation * deviation;
        for (const at of [0, place]) {
          this.counts[at] = (this.counts[at] ?? 0) + 1;
          this.sums[at] = (this.sums[at] ?? 0) + deviation;
        }
      }
    }
    this.squares = squares;
    this.spread = this.n < 2 ? 0 : squares / (this.n - 1);
    this.cells = cells.length;
    this.sharedCells = cells.filter((entries) => entries.length > 1).length;
    this.bySize = cellsBySize(cells, this.width);
  }

  /** −2 × the restricted log-likelihood at the best residual variance for these ratios to it. */
  deviance(cells: number, observers: number): number {
    const { logDeterminant, quadratic } = this.reduced(cells, observers);
    const degrees = this.n - 1;
    return degrees * (Math.log((2 * Math.PI * quadratic) / degrees) + 1) + logDeterminant;
  }

  /** The same at given variances. */
  devianceAt(cells: number, observers: number, residual: number): number {
    const { logDeterminant, quadratic } = this.reduced(cells / residual, observers / residual);
    return (this.n - 1) * Math.log(2 * Math.PI * residual) + logDeterminant + quadratic / residual;
  }

  residualVariance(cells: number, observers: number): number {
    return this.reduced(cells, observers).quadratic / (this.n - 1);
  }

  /** ln determinants of the covariance and of the mean's information, and yᵀPy, residual variance 1. */
  private reduced(cells: number, observers: number): { logDeterminant: number; quadratic: number } {
    const { width } = this;
    const matrix = new Float64Array(width * width);
    const right = Float64Array.from(this.sums);
    for (let i = 0; i < width; i += 1) {
      matrix[i * width + i] = this.counts[i] ?? 0;
      matrix[i] = this.counts[i] ?? 0;
      matrix[i * width] = this.counts[i] ?? 0;
    }
    let logDeterminant = 0;
    let quadratic = this.squares;
    for (const group of this.bySize) {
      const taken = cells / (1 + group.size * cells);
      logDeterminant += group.cells * Math.log1p(group.size * cells);
      quadratic -= taken * group.sumsSquared;
      for (let i = 0; i < width; i += 1) {
        right[i] = (right[i] ?? 0) - taken * (group.withSums[i] ?? 0);
        for (let j = 0; j < width; j += 1) {
          const place = i * width + j;
          matrix[place] = (matrix[place] ?? 0) - taken * (group.products[place] ?? 0);
        }
      }
    }
    // Observers' effects as root × a standard one: no division by a variance of 0.
    const root = Math.sqrt(observers);
    for (let i = 1; i < width; i += 1) {
      right[i] = (right[i] ?? 0) * root;
      for (let j = 0; j < width; j += 1) {
        const [ij, ji] = [i * width + j, j * width + i];
        if (j >= 1) matrix[ij] = (matrix[ij] ?? 0) * observers + (i === j ? 1 : 0);
        else {
          matrix[ij] = (matrix[ij] ?? 0) * root;
          matrix[ji] = (matrix[ji] ?? 0) * root;
        }
      }
    }
    return this.eliminated(matrix, right, logDeterminant, quadratic);
  }

  /** Cholesky's factor of the equations: its diagonal and what the right side loses by it. */
  private eliminated(
    matrix: Float64Array,
    right: Float64Array,
    logDeterminant: number,
    quadratic: number,
  ): { logDeterminant: number; quadratic: number } {
    const { width } = this;
    let [log, rest] = [logDeterminant, quadratic];
    for (let j = 0; j < width; j += 1) {
      for (let i = j; i < width; i += 1) {
        let value = matrix[i * width + j] ?? 0;
        for (let k = 0; k < j; k += 1) {
          value -= (matrix[i * width + k] ?? 0) * (matrix[j * width + k] ?? 0);
        }
        if (i === j) {
          if (!(value > 0)) return { logDeterminant: NaN, quadratic: NaN };
          log += Math.log(value);
          matrix[j * width + j] = Math.sqrt(value);
        } else matrix[i * width + j] = value / (matrix[j * width + j] ?? NaN);
      }
      let value = right[j] ?? 0;
      for (let k = 0; k < j; k += 1) value -= (matrix[j * width + k] ?? 0) * (right[k] ?? 0);
      const solved = value / (matrix[j * width + j] ?? NaN);
      right[j] = solved;
      rest -= solved * solved;
    }
    return { logDeterminant: log, quadratic: rest };
  }
}

function byTheirData(measured: readonly Measured[]): string[] {
  const values = new Map<string, number[]>();
  for (const { observer, value } of measured) {
    const own = values.get(observer);
    if (own === undefined) values.set(observer, [value]);
    else own.push(value);
  }
  return [...values.keys()]
    .map((observer) => ({
      observer,
      n: values.get(observer)?.length ?? 0,
      sum: sum(values.get(observer) ?? []),
    }))
    .sort(
      (one, other) =>
        one.n - other.n || one.sum - other.sum || (one.observer < other.observer ? -1 : 1),
    )
    .map(({ observer }) => observer);
}

function cellsBySize(
  cells: readonly (readonly (readonly [place: number, deviation: number])[])[],
  width: number,
): CellsOfSize[] {
  const bySize = new Map<number, CellsOfSize>();
  for (const entries of cells) {
    const size = entries.length;
    const group = bySize.get(size) ?? {
      size,
      cells: 0,
      products: new Float64Array(width * width),
      withSums: new Float64Array(width),
      sumsSquared: 0,
    };
    bySize.set(size, group);
    let total = 0;
    for (const [, deviation] of entries) total += deviation;
    group.cells += 1;
    group.sumsSquared += total * total;
    // The mean, place 0, enters once for every value of the cell.
    const add = (i: number, j: number, amount: number): void => {
      group.products[i * width + j] = (group.products[i * width + j] ?? 0) + amount;
    };
    add(0, 0, size * size);
    group.withSums[0] = (group.withSums[0] ?? 0) + size * total;
    for (const [i] of entries) {
      group.withSums[i] = (group.withSums[i] ?? 0) + total;
      add(0, i, size);
      add(i, 0, size);
      for (const [j] of entries) add(i, j, 1);
    }
  }
  return [...bySize.values()].sort((one, other) => one.size - other.size);
}
