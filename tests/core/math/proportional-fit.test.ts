import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proportionalFit } from '../../../server/core/math/proportional-fit.js';

type Cell = readonly [row: number, column: number];

const sumsOf = (values: readonly number[], cells: readonly Cell[], side: 0 | 1, count: number) =>
  Array.from({ length: count }, (_, which) =>
    cells.reduce((sum, cell, at) => (cell[side] === which ? sum + (values[at] ?? 0) : sum), 0),
  );

/** A table with something in every cell: single birds beside thousands, as in a tally. */
const tables = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 6 }))
  .chain(([rows, columns]) =>
    fc.record({
      rows: fc.constant(rows),
      columns: fc.constant(columns),
      filled: fc.uniqueArray(
        fc.record({
          cell: fc.tuple(fc.nat(rows - 1), fc.nat(columns - 1)),
          number: fc.oneof(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 3 })),
        }),
        { selector: ({ cell }) => cell.join(), minLength: 1, maxLength: rows * columns },
      ),
    }),
  );

describe('proportional fit', () => {
  it('is the product of the sums over the total where every cell may hold something', () => {
    const cells: Cell[] = [
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ];
    const values = proportionalFit([30, 10], [24, 16], cells);
    [18, 12, 6, 4].forEach((wanted, at) => expect(values[at]).toBeCloseTo(wanted, 9));
  });

  it('meets the sums, and no change that keeps them gives more entropy', () => {
    fc.assert(
      fc.property(tables, ({ rows, columns, filled }) => {
        const cells = filled.map(({ cell }) => cell);
        const numbers = filled.map(({ number }) => number);
        const rowSums = sumsOf(numbers, cells, 0, rows);
        const columnSums = sumsOf(numbers, cells, 1, columns);
        const values = proportionalFit(rowSums, columnSums, cells);
        const total = numbers.reduce((sum, number) => sum + number, 0);
        sumsOf(values, cells, 0, rows).forEach((sum, row) => {
          expect(Math.abs(sum - (rowSums[row] ?? 0))).toBeLessThan(1e-9 * total);
        });
        sumsOf(values, cells, 1, columns).forEach((sum, column) => {
          expect(Math.abs(sum - (columnSums[column] ?? 0))).toBeLessThan(1e-9 * total);
        });
        // Greatest entropy under the sums: ln value is a row term plus a column term, so around
        // any rectangle of cells the cross ratio is 1.
        const at = (row: number, column: number): number | undefined =>
          values[cells.findIndex(([r, c]) => r === row && c === column)];
        for (let r = 1; r < rows; r += 1) {
          for (let c = 1; c < columns; c += 1) {
            const [a, b, d, e] = [at(0, 0), at(0, c), at(r, 0), at(r, c)];
            if (a === undefined || b === undefined || d === undefined || e === undefined) continue;
            expect(Math.log(a) + Math.log(e)).toBeCloseTo(Math.log(b) + Math.log(d), 5);
          }
        }
      }),
      { numRuns: 2000 },
    );
  });
});
