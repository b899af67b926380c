import { fUpperTail } from '../math/f-distribution.js';
import { mean, squaredDeviations, sum } from '../math/sum.js';

export interface VarianceSource {
  readonly degreesOfFreedom: number;
  readonly sumOfSquares: number;
  /** `null` without degrees of freedom. */
  readonly meanSquare: number | null;
}

/** A source held against the residual; `null` where the residual is 0 or has no degrees of freedom. */
export interface TestedSource extends VarianceSource {
  readonly f: number | null;
  readonly p: number | null;
}

export interface OneWayAnalysis {
  readonly between: TestedSource;
  readonly within: VarianceSource;
  /** Share of the spread that is between groups; `null` where nothing varies. */
  readonly rSquared: number | null;
  readonly residualDeviation: number | null;
}

/**
 * One-way analysis of variance (Fisher 1925): how far values of a group are alike.
 *
 * The least value is taken off all, which for values that share leading digits is exact in a double;
 * then two passes with exact sums. Measured against the certified values of the NIST reference sets
 * (`tests/published/nist-analysis-of-variance.test.ts`). Assumes normal errors of one variance for
 * `p`; sums of squares assume nothing.
 *
 * @param groups any number of values each; empty ones are left out
 * @throws RangeError for fewer than two groups with values
 * @example oneWayAnalysis([[1, 2], [3, 4]]).between.f // 8
 */
export function oneWayAnalysis(groups: readonly (readonly number[])[]): OneWayAnalysis {
  const filled = groups.filter((group) => group.length > 0);
  if (filled.length < 2) {
    throw new RangeError(`oneWayAnalysis requires two groups with values, not ${filled.length}`);
  }
  const shifted = lessLeast(filled);
  const n = sum(shifted.map(({ length }) => length));
  const grand = sum(shifted.map((group) => sum(group))) / n;
  const between = sum(shifted.map((group) => group.length * (mean(group) - grand) ** 2));
  const within = sum(shifted.map(squaredDeviations));
  const residual = source(within, n - shifted.length);
  return {
    between: tested(between, shifted.length - 1, residual),
    within: residual,
    rSquared: between + within === 0 ? null : between / (between + within),
    residualDeviation: residual.meanSquare === null ? null : Math.sqrt(residual.meanSquare),
  };
}

export interface TwoWayAnalysis {
  readonly rows: TestedSource;
  readonly columns: TestedSource;
  /** `null` with one value a place: it cannot be told from the residual. */
  readonly interaction: TestedSource | null;
  readonly residual: VarianceSource;
}

/**
 * Two-way analysis of variance with the same number of values, one or more, in every place of a table
 * of rows and columns. With one value a place the interaction is the residual.
 *
 * @param table rows of columns of values
 * @throws RangeError for fewer than two rows or columns, or places with different numbers of values
 */
export function twoWayAnalysis(table: readonly (readonly (readonly number[])[])[]): TwoWayAnalysis {
  const rows = table.length;
  const columns = table[0]?.length ?? 0;
  const each = table[0]?.[0]?.length ?? 0;
  const even = table.every(
    (row) => row.length === columns && row.every((place) => place.length === each),
  );
  if (rows < 2 || columns < 2 || each < 1 || !even) {
    throw new RangeError('twoWayAnalysis requires two rows and columns or more, evenly filled');
  }
  const places = lessLeast(table.flat());
  const means = places.map(mean);
  const grand = mean(means);
  const rowMeans = Array.from({ length: rows }, (_, row) =>
    mean(means.slice(row * columns, (row + 1) * columns)),
  );
  const columnMeans = Array.from({ length: columns }, (_, column) =>
    mean(means.filter((__, place) => place % columns === column)),
  );
  const square = (x: number): number => x * x;
  const ofRows = columns * each * sum(rowMeans.map((value) => square(value - grand)));
  const ofColumns = rows * each * sum(columnMeans.map((value) => square(value - grand)));
  const ofPlaces =
    each *
    sum(
      means.map((value, place) =>
        square(
          value -
            (rowMeans[Math.floor(place / columns)] ?? NaN) -
            (columnMeans[place % columns] ?? NaN) +
            grand,
        ),
      ),
    );
  const df = (rows - 1) * (columns - 1);
  const residual =
    each === 1
      ? source(ofPlaces, df)
      : source(sum(places.map(squaredDeviations)), rows * columns * (each - 1));
  return {
    rows: tested(ofRows, rows - 1, residual),
    columns: tested(ofColumns, columns - 1, residual),
    interaction: each === 1 ? null : tested(ofPlaces, df, residual),
    residual,
  };
}

function lessLeast(groups: readonly (readonly number[])[]): Float64Array[] {
  let least = Infinity;
  for (const group of groups) for (const value of group) least = Math.min(least, value);
  return groups.map((group) => {
    const shifted = new Float64Array(group.length);
    for (let i = 0; i < group.length; i += 1) shifted[i] = (group[i] ?? NaN) - least;
    return shifted;
  });
}

function source(sumOfSquares: number, degreesOfFreedom: number): VarianceSource {
  const meanSquare = degreesOfFreedom > 0 ? sumOfSquares / degreesOfFreedom : null;
  return { degreesOfFreedom, sumOfSquares, meanSquare };
}

function tested(
  sumOfSquares: number,
  degreesOfFreedom: number,
  residual: VarianceSource,
): TestedSource {
  const own = source(sumOfSquares, degreesOfFreedom);
  const below = residual.meanSquare;
  if (own.meanSquare === null || below === null || below === 0) return { ...own, f: null, p: null };
  const f = own.meanSquare / below;
  return { ...own, f, p: fUpperTail(f, degreesOfFreedom, residual.degreesOfFreedom) };
}
