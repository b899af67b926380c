import { describe, expect, it } from 'vitest';
import { minCostFlow } from '../../server/core/math/min-cost-flow.js';

/**
 * Minimum-cost assignment as a flow. Totals were confirmed with scipy 1.10.1
 * (`scipy.optimize.linear_sum_assignment`) and by trying every assignment.
 */
const checks = [
  {
    name: 'scipy.optimize.linear_sum_assignment, documentation example',
    cost: [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ],
    total: 5,
    columnForRow: [1, 0, 2],
  },
  {
    name: 'Python munkres, documentation example (from memory, confirmed as above)',
    cost: [
      [5, 9, 1],
      [10, 3, 2],
      [8, 7, 4],
    ],
    total: 12,
    columnForRow: [2, 1, 0],
  },
  {
    name: 'random 5 × 5, no publication (optimum may not be unique)',
    cost: [
      [47, 68, 25, 67, 83],
      [23, 92, 57, 14, 23],
      [72, 89, 42, 90, 8],
      [39, 68, 48, 7, 44],
      [0, 75, 55, 6, 19],
    ],
    total: 115,
    columnForRow: null,
  },
  {
    name: 'random 4 × 7, no publication (optimum may not be unique)',
    cost: [
      [60, 44, 63, 69, 56, 24, 55],
      [53, 61, 64, 34, 56, 73, 78],
      [38, 4, 9, 87, 99, 67, 72],
      [83, 48, 1, 64, 16, 31, 93],
    ],
    total: 63,
    columnForRow: null,
  },
];

function assign(cost: readonly (readonly number[])[]) {
  const rows = cost.length;
  const columns = cost[0]?.length ?? 0;
  const sink = rows + columns + 1;
  const pairs = cost.flatMap((costs, row) =>
    costs.map((value, column) => ({
      from: 1 + row,
      to: 1 + rows + column,
      capacity: 1,
      cost: value,
    })),
  );
  const edges = [
    ...pairs,
    ...cost.map((_, row) => ({ from: 0, to: 1 + row, capacity: 1, cost: 0 })),
    ...Array.from({ length: columns }, (_, column) => ({
      from: 1 + rows + column,
      to: sink,
      capacity: 1,
      cost: 0,
    })),
  ];
  const answer = minCostFlow({ nodes: sink + 1, edges, source: 0, sink, stop: 'max-flow' });
  const columnForRow = cost.map(
    (_, row) =>
      pairs.findIndex((pair, index) => pair.from === 1 + row && answer.flow[index] === 1) % columns,
  );
  return { ...answer, columnForRow };
}

describe('assignment through minCostFlow', () => {
  it.each(checks)('$name', ({ cost, total, columnForRow }) => {
    const answer = assign(cost);
    expect(answer.cost).toBe(total);
    expect(answer.total).toBe(cost.length);
    if (columnForRow !== null) expect(answer.columnForRow).toEqual(columnForRow);
  });
});
