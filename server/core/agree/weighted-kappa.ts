import { zOfLevel } from '../math/normal.js';

export interface Kappa {
  /** `null` where chance alone would give complete agreement. */
  readonly value: number | null;
  /** Normal limits, not cut off at 1; `null` as `value`. */
  readonly low: number | null;
  readonly high: number | null;
  readonly standardError: number | null;
  /** Standard error if there were no agreement beyond chance: for a test, not for an interval. */
  readonly standardErrorIfNone: number | null;
  /** Share agreed, weighted. */
  readonly observed: number;
  /** Share that would be agreed by chance with the same totals, weighted. */
  readonly expected: number;
  readonly n: number;
}

interface Entry {
  readonly row: number;
  readonly column: number;
  readonly share: number;
  readonly weight: number;
}

/** Table and weights as one list of shares; refuses what is not a square table of counts. */
function entriesOf(
  table: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
): { entries: Entry[]; n: number } {
  const size = table.length;
  const square = (rows: readonly (readonly number[])[]): boolean =>
    rows.length === size && rows.every((row) => row.length === size);
  if (size === 0 || !square(table) || !square(weights)) {
    throw new RangeError('kappa requires a square table and weights of the same size');
  }
  if (!table.flat().every((count) => count >= 0)) {
    throw new RangeError('kappa requires numbers of at least 0');
  }
  const n = table.flat().reduce((total, count) => total + count, 0);
  if (!(n > 0)) throw new RangeError('kappa requires at least one thing that both named');
  const entries = table.flatMap((counts, row) =>
    counts.map((count, column) => ({
      row,
      column,
      share: count / n,
      weight: weights[row]?.[column] ?? NaN,
    })),
  );
  return { entries, n };
}

function addUp(size: number, entries: readonly Entry[], by: 'row' | 'column'): number[] {
  const totals = new Array<number>(size).fill(0);
  for (const entry of entries) totals[entry[by]] = (totals[entry[by]] ?? 0) + entry.share;
  return totals;
}

/**
 * Cohen's weighted kappa (1968, Psychol. Bull. 70:213): agreement beyond chance where some
 * disagreements are milder than others.
 *
 * Method: (p_o − p_e)/(1 − p_e) with agreement weights; standard errors, for an interval and
 * under no agreement, by Fleiss, Cohen & Everitt (1969, Psychol. Bull. 72:323). It takes the things named as independent: birds of
 * one flock are not, so that the interval is then too narrow (see `agreementOf`).
 *
 * @param table rows: what the first named; columns: what the second did; same order of names
 * @param weights agreement weights, 1 on the diagonal (full) to 0 (none), same shape
 * @param level of the interval, such as 0.95
 * @throws RangeError for a table that is not square, negative numbers, or an empty table
 * @example weightedKappa([[2, 1], [1, 2]], [[1, 0], [0, 1]]).observed // 0.6666666666666666
 */
export function weightedKappa(
  table: readonly (readonly number[])[],
  weights: readonly (readonly number[])[],
  level = 0.95,
): Kappa {
  const { entries, n } = entriesOf(table, weights);
  const rowShares = addUp(table.length, entries, 'row');
  const columnShares = addUp(table.length, entries, 'column');
  const rowWeights = new Array<number>(table.length).fill(0);
  const columnWeights = new Array<number>(table.length).fill(0);
  let observed = 0;
  let expected = 0;
  for (const { row, column, share, weight } of entries) {
    const [inRow, inColumn] = [rowShares[row] ?? 0, columnShares[column] ?? 0];
    observed += weight * share;
    expected += weight * inRow * inColumn;
    rowWeights[row] = (rowWeights[row] ?? 0) + weight * inColumn;
    columnWeights[column] = (columnWeights[column] ?? 0) + weight * inRow;
  }
  if (1 - expected < 1e-12) {
    const none = { value: null, low: null, high: null, standardError: null };
    return { ...none, standardErrorIfNone: null, observed, expected, n };
  }
  const value = (observed - expected) / (1 - expected);
  let squares = 0;
  let squaresIfNone = 0;
  for (const { row, column, share, weight } of entries) {
    const pull = (rowWeights[row] ?? 0) + (columnWeights[column] ?? 0);
    squares += share * (weight - pull * (1 - value)) ** 2;
    squaresIfNone += (rowShares[row] ?? 0) * (columnShares[column] ?? 0) * (weight - pull) ** 2;
  }
  const spread = squares - (value - expected * (1 - value)) ** 2;
  const standardError = Math.sqrt(Math.max(0, spread) / n) / (1 - expected);
  const reach = zOfLevel(level) * standardError;
  const standardErrorIfNone =
    Math.sqrt(Math.max(0, squaresIfNone - expected ** 2) / n) / (1 - expected);
  return {
    value,
    low: value - reach,
    high: value + reach,
    standardError,
    standardErrorIfNone,
    observed,
    expected,
    n,
  };
}
