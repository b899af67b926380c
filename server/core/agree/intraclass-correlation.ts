import { fQuantile } from '../math/f-distribution.js';
import { mean, sum } from '../math/sum.js';

export interface Icc {
  /** `null` where nothing varies. */
  readonly value: number | null;
  /** `null` where the observers leave no residual: the interval then has no width that means a thing. */
  readonly low: number | null;
  readonly high: number | null;
}

/** The six forms of Shrout & Fleiss (1979); k = the mean of all observers. */
export interface IntraclassCorrelations {
  /** Each thing by its own random set of observers. */
  readonly oneWaySingle: Icc;
  readonly oneWayMean: Icc;
  /** The same observers, drawn at random from many: their biases count against agreement. */
  readonly agreementSingle: Icc;
  readonly agreementMean: Icc;
  /** These very observers, their biases set aside. */
  readonly consistencySingle: Icc;
  readonly consistencyMean: Icc;
  readonly meanSquares: {
    readonly things: number;
    readonly observers: number;
    readonly residual: number;
    readonly within: number;
  };
}

/**
 * Intraclass correlations of measurements by the same observers of the same things, in all six forms
 * (Shrout & Fleiss 1979, Psychol. Bull. 86:420) with intervals of McGraw & Wong (1996, Psychol.
 * Methods 1:30); those of the agreement of a mean are the single ones stepped up by Spearman–Brown.
 *
 * Purpose: how much of the spread of (ln) counts is between flocks rather than between observers.
 * Estimates may be negative, which is read as none. Assumes effects independent and about normal,
 * with one variance. Where observers agree in full, or but for a constant, there is no residual: the
 * forms that this concerns are then exactly 1, or below it by the observers' part, without limits.
 *
 * @param ratings rows: things; columns: observers; no gaps
 * @throws RangeError for fewer than two things or observers, or rows of different length
 */
export function intraclassCorrelations(
  ratings: readonly (readonly number[])[],
  level = 0.95,
): IntraclassCorrelations {
  const things = ratings.length;
  const observers = ratings[0]?.length ?? 0;
  if (things < 2 || observers < 2 || !ratings.every((row) => row.length === observers)) {
    throw new RangeError(
      'intraclassCorrelations requires two things or more, each by the same two observers or more',
    );
  }
  const squares = meanSquaresOf(ratings, things, observers);
  const tail = (1 + level) / 2;
  const consistencyDf = (things - 1) * (observers - 1);
  const oneWay = byF(squares.things, squares.within, things - 1, things * (observers - 1), tail);
  const consistency = byF(squares.things, squares.residual, things - 1, consistencyDf, tail);
  const agreement = agreementSingle(squares, things, observers, tail);
  const overall = (each: number): number => stepUp(each, observers);
  return {
    oneWaySingle: each(oneWay, (f) => single(f, observers)),
    oneWayMean: each(oneWay, ofMean),
    agreementSingle: agreement,
    agreementMean: each(agreement, overall),
    consistencySingle: each(consistency, (f) => single(f, observers)),
    consistencyMean: each(consistency, ofMean),
    meanSquares: squares,
  };
}

/** Two passes over deviations from the least value, each sum exact; nothing but rounding is nothing. */
function meanSquaresOf(
  ratings: readonly (readonly number[])[],
  things: number,
  observers: number,
): IntraclassCorrelations['meanSquares'] {
  const size = things * observers;
  const values = new Float64Array(size);
  let least = Infinity;
  for (const row of ratings) {
    for (let j = 0; j < observers; j += 1) least = Math.min(least, row[j] ?? NaN);
  }
  const columns = Array.from({ length: observers }, () => new Float64Array(things));
  const rowMeans = new Float64Array(things);
  for (let i = 0; i < things; i += 1) {
    const row = ratings[i] ?? [];
    for (let j = 0; j < observers; j += 1) {
      const value = (row[j] ?? NaN) - least;
      values[i * observers + j] = value;
      const column = columns[j];
      if (column !== undefined) column[i] = value;
    }
    rowMeans[i] = mean(values.subarray(i * observers, (i + 1) * observers));
  }
  const columnMeans = Float64Array.from(columns, mean);
  const grand = mean(rowMeans);
  const within = new Float64Array(size);
  const residual = new Float64Array(size);
  for (let i = 0; i < things; i += 1) {
    for (let j = 0; j < observers; j += 1) {
      const place = i * observers + j;
      const deviation = (values[place] ?? NaN) - (rowMeans[i] ?? NaN);
      within[place] = deviation ** 2;
      residual[place] = (deviation - (columnMeans[j] ?? NaN) + grand) ** 2;
    }
  }
  const between = (means: Float64Array): number => sum(means.map((value) => (value - grand) ** 2));
  const squares = {
    things: (observers * between(rowMeans)) / (things - 1),
    observers: (things * between(columnMeans)) / (observers - 1),
    residual: sum(residual) / ((things - 1) * (observers - 1)),
    within: sum(within) / (things * (observers - 1)),
  };
  const nothing = 1e-26 * Math.max(grand ** 2, least ** 2, squares.things, squares.observers);
  const clean = (square: number): number => (square <= nothing ? 0 : square);
  return {
    things: clean(squares.things),
    observers: clean(squares.observers),
    residual: clean(squares.residual),
    within: clean(squares.within),
  };
}

/** A variance ratio with its limits: low = F / F*, high = F × F*, with degrees of freedom swapped. */
function byF(
  above: number,
  below: number,
  numerator: number,
  denominator: number,
  tail: number,
): Icc {
  if (below === 0) return { value: above === 0 ? null : Infinity, low: null, high: null };
  const ratio = above / below;
  return {
    value: ratio,
    low: ratio / fQuantile(tail, numerator, denominator),
    high: ratio * fQuantile(tail, denominator, numerator),
  };
}

function each({ value, low, high }: Icc, of: (part: number) => number): Icc {
  const applied = (part: number | null): number | null => (part === null ? null : of(part));
  return { value: applied(value), low: applied(low), high: applied(high) };
}

function single(f: number, observers: number): number {
  return f === Infinity ? 1 : (f - 1) / (f + observers - 1);
}

function ofMean(f: number): number {
  return 1 - 1 / f;
}

/** Spearman–Brown: the correlation of a mean of so many from that of a single one. */
function stepUp(correlation: number, observers: number): number {
  return (observers * correlation) / (1 + (observers - 1) * correlation);
}

/** ICC(2,1), McGraw & Wong's ICC(A,1), with Satterthwaite's degrees of freedom. */
function agreementSingle(
  squares: IntraclassCorrelations['meanSquares'],
  n: number,
  k: number,
  tail: number,
): Icc {
  const { things, observers, residual } = squares;
  const denominator = things + (k - 1) * residual + (k * (observers - residual)) / n;
  if (denominator === 0) return { value: null, low: null, high: null };
  const value = (things - residual) / denominator;
  if (residual === 0) return { value, low: null, high: null };
  const observerPart = (k * value * observers) / residual;
  const residualPart = n * (1 + (k - 1) * value) - k * value;
  const df =
    ((k - 1) * (n - 1) * (observerPart + residualPart) ** 2) /
    ((n - 1) * observerPart ** 2 + residualPart ** 2);
  const upperF = fQuantile(tail, n - 1, df);
  const lowerF = fQuantile(tail, df, n - 1);
  const rest = k * observers + (k * n - k - n) * residual;
  return {
    value,
    low: (n * (things - upperF * residual)) / (upperF * rest + n * things),
    high: (n * (lowerF * things - residual)) / (rest + n * lowerF * things),
  };
}
