import { inverseOfPositiveDefinite } from './cholesky.js';
import { UnionFind } from './union-find.js';

/** A table's cells, with the rows' and columns' members by index into them. */
interface Table {
  readonly values: number[];
  readonly cells: readonly (readonly [row: number, column: number])[];
  readonly inRow: readonly (readonly number[])[];
  readonly inColumn: readonly (readonly number[])[];
}

const ROUNDS_OF_SCALING = 60;
const MOST_NEWTON_STEPS = 100;

/**
 * The table of greatest entropy on the given cells that has the given row and column sums, as
 * iterative proportional fitting finds it (Deming & Stephan 1940, Ann. Math. Stat. 11:427).
 *
 * Fitting alone creeps where a few birds join large rows: it may need a million rounds. So after
 * some rounds Newton's method goes on from there on the same table's dual, the column factors, with
 * the rows fitted after each step (Boyd & Vandenberghe 2004, Convex Optimization, 5.2 and 9.5).
 *
 * @param rows row sums, 0 or more.
 * @param columns column sums, 0 or more, of the same total.
 * @param allowed cells [row, column] that may hold something. There must be some table with all of
 *   them above zero, or the answer only comes near one.
 * @returns the cells' values in the order of `allowed`; row and column sums are met to about 1e-12
 *   of the total.
 */
export function proportionalFit(
  rows: readonly number[],
  columns: readonly number[],
  allowed: readonly (readonly [row: number, column: number])[],
): number[] {
  const table: Table = {
    values: allowed.map(() => 1),
    cells: allowed,
    inRow: members(rows.length, allowed, 0),
    inColumn: members(columns.length, allowed, 1),
  };
  const total = rows.reduce((running, row) => running + row, 0);
  const tolerance = Math.max(total, 1) * 1e-12;
  for (let round = 0; round < ROUNDS_OF_SCALING; round += 1) {
    scale(table.values, table.inColumn, columns);
    scale(table.values, table.inRow, rows);
    if (gapOf(table, columns) <= tolerance) return table.values;
  }
  let best = table;
  for (let step = 0; step < MOST_NEWTON_STEPS; step += 1) {
    if (gapOf(best, columns) <= tolerance) break;
    const better = newtonStep(best, rows, columns);
    if (better === null) break;
    best = better;
  }
  return best.values;
}

function members(
  count: number,
  cells: readonly (readonly [number, number])[],
  side: 0 | 1,
): number[][] {
  const lists = Array.from({ length: count }, (): number[] => []);
  cells.forEach((cell, index) => lists[cell[side]]?.push(index));
  return lists;
}

function sumOf(values: readonly number[], list: readonly number[]): number {
  return list.reduce((running, index) => running + (values[index] ?? 0), 0);
}

/** Multiplies each list's cells so that they add up to what is wanted. */
function scale(
  values: number[],
  lists: readonly (readonly number[])[],
  wanted: readonly number[],
): void {
  lists.forEach((list, which) => {
    const sum = sumOf(values, list);
    if (sum === 0) return;
    const factor = (wanted[which] ?? 0) / sum;
    for (const index of list) values[index] = (values[index] ?? 0) * factor;
  });
}

/** How far the columns are from their sums at most; the rows have just been fitted. */
function gapOf(table: Table, columns: readonly number[]): number {
  return table.inColumn.reduce(
    (gap, list, column) =>
      Math.max(gap, Math.abs(sumOf(table.values, list) - (columns[column] ?? 0))),
    0,
  );
}

/**
 * One damped Newton step on the ln column factors; `null` where no step is any better.
 *
 * The dual is Σ rows · ln(sum of the row's factors) − Σ columns · ln factor, to be made least; its
 * slope is how far the columns are from their sums, its second derivative the Schur complement
 * diag(columns) − Xᵀ diag(1/rows) X. That does not see a factor common to linked columns, so one
 * column of each linked set is pinned.
 */
function newtonStep(
  table: Table,
  rows: readonly number[],
  columns: readonly number[],
): Table | null {
  const { values, inRow, inColumn, cells } = table;
  const columnOf = (index: number): number => cells[index]?.[1] ?? 0;
  const pinned = pinnedColumns(table);
  const inverse = inverseCurvature(table, pinned);
  if (inverse === null) return null;
  const short = inColumn.map((list, j) =>
    pinned.has(j) ? 0 : (columns[j] ?? 0) - sumOf(values, list),
  );
  const direction = columns.map((_, i) =>
    short.reduce((running, gap, j) => running + (inverse[i * columns.length + j] ?? 0) * gap, 0),
  );
  const slope = -short.reduce((running, gap, j) => running + gap * (direction[j] ?? 0), 0);
  if (!(slope < 0)) return null;
  const change = (length: number): number => {
    const by = (index: number): number => length * (direction[columnOf(index)] ?? 0);
    const ofRows = inRow.reduce((running, list) => {
      const sum = sumOf(values, list);
      if (sum === 0) return running;
      // Against the row's largest, so that nothing overflows or cancels.
      const most = Math.max(...list.map(by));
      const rest = list.reduce(
        (mean, index) => mean + ((values[index] ?? 0) / sum) * Math.expm1(by(index) - most),
        0,
      );
      return running + sum * (most + Math.log1p(rest));
    }, 0);
    const ofColumns = columns.reduce(
      (running, column, j) => running + column * length * (direction[j] ?? 0),
      0,
    );
    return ofRows - ofColumns;
  };
  // Where the dual bends little a whole step would go far beyond the least.
  const longest = Math.max(...direction.map(Math.abs));
  for (let length = Math.min(1, 2 / longest); length * longest > 1e-9; length /= 2) {
    const next = {
      ...table,
      values: values.map(
        (value, index) => value * Math.exp(length * (direction[columnOf(index)] ?? 0)),
      ),
    };
    scale(next.values, inRow, rows);
    const falls = change(length) <= 1e-4 * length * slope;
    // Near the end the change drowns in rounding, and what is nearer to its sums is better.
    const drowns = slope > -1e-6;
    if (falls || (drowns && gapOf(next, columns) < gapOf(table, columns))) {
      return next.values.every(Number.isFinite) ? next : null;
    }
  }
  return null;
}

/** Inverse of the dual's second derivative; the pinned columns stand apart with a 1. */
function inverseCurvature(
  { values, inRow, inColumn, cells }: Table,
  pinned: ReadonlySet<number>,
): Float64Array | null {
  const size = inColumn.length;
  const curvature = new Float64Array(size * size);
  inColumn.forEach((list, j) => {
    curvature[j * size + j] = pinned.has(j) ? 1 : sumOf(values, list);
  });
  for (const list of inRow) {
    const sum = sumOf(values, list);
    if (sum === 0) continue;
    for (const one of list) {
      for (const other of list) {
        const [i, j] = [cells[one]?.[1] ?? 0, cells[other]?.[1] ?? 0];
        if (pinned.has(i) || pinned.has(j)) continue;
        const share = (values[one] ?? 0) * ((values[other] ?? 0) / sum);
        curvature[i * size + j] = (curvature[i * size + j] ?? 0) - share;
      }
    }
  }
  const inverse = inverseOfPositiveDefinite(curvature, size);
  return inverse?.every(Number.isFinite) === true ? inverse : null;
}

/** The fullest of each set of columns that rows link. */
function pinnedColumns({ values, inRow, inColumn, cells }: Table): Set<number> {
  const linked = new UnionFind(inColumn.length);
  for (const list of inRow) {
    const columns = list.flatMap((index) =>
      (values[index] ?? 0) > 0 ? (cells[index]?.[1] ?? []) : [],
    );
    for (const column of columns) linked.join(columns[0] ?? column, column);
  }
  const sums = inColumn.map((list) => sumOf(values, list));
  const fuller = (one: number, other: number): number =>
    (sums[other] ?? 0) > (sums[one] ?? 0) ? other : one;
  return new Set(linked.sets().map((set) => set.reduce(fuller)));
}
