import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { isCheapestFlow } from '../../server/core/math/cheapest-flow.js';
import {
  minCostFlow,
  type FlowEdge,
  type FlowProblem,
} from '../../server/core/math/min-cost-flow.js';
import { solveWithHighs, startHighs } from './solve-with-highs.js';

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

/** The flow problem as a linear programme, total given or free: its least cost by HiGHS. */
function costByHighs({ nodes, edges, source, sink }: FlowProblem, total: number | null): number {
  const terms = Array.from({ length: nodes }, (): [number, number][] => []);
  edges.forEach(({ from, to }, index) => {
    terms[from]?.push([index, -1]);
    terms[to]?.push([index, 1]);
  });
  const due = (node: number) =>
    node === sink ? (total ?? 0) : node === source ? -(total ?? 0) : 0;
  const isEnd = (node: number) => node === sink || node === source;
  const rows = terms.flatMap((own, node) => {
    if (own.length === 0 || (total === null && node === source)) return [];
    const most = total === null && isEnd(node) ? Infinity : due(node);
    return [{ terms: own, least: due(node), most }];
  });
  const answer = solveWithHighs(highs, {
    costs: edges.map(({ cost }) => cost),
    bounds: edges.map(({ capacity }) => ({ least: 0, most: capacity })),
    rows,
  });
  if (answer.kind !== 'optimal') throw new Error(`HiGHS says ${answer.kind}`);
  return answer.cost;
}

/** So many from each place, so many to each, and a cost for every pair: a flow from 0 to the last node. */
function transport(supply: number[], demand: number[], cost: number[][]): FlowProblem {
  const sink = supply.length + demand.length + 1;
  const to = (column: number) => 1 + supply.length + column;
  return {
    nodes: sink + 1,
    edges: [
      ...supply.map((capacity, row) => ({ from: 0, to: 1 + row, capacity, cost: 0 })),
      ...demand.map((capacity, column) => ({ from: to(column), to: sink, capacity, cost: 0 })),
      ...cost.flatMap((costs, row) =>
        costs.map((each, column) => ({
          from: 1 + row,
          to: to(column),
          capacity: Math.min(supply[row] ?? 0, demand[column] ?? 0),
          cost: each,
        })),
      ),
    ],
    source: 0,
    sink,
    stop: 'max-flow',
  };
}

/** Many sightings in time, each edge onward in time, some worth having and some not. */
const inTime = fc.integer({ min: 3, max: 25 }).chain((nodes) =>
  fc.record({
    nodes: fc.constant(nodes),
    edges: fc.array(
      fc
        .record({
          ends: fc.uniqueArray(fc.nat(nodes - 1), { minLength: 2, maxLength: 2 }),
          capacity: fc.nat(500),
          cost: fc.integer({ min: -9_000, max: 9_000 }),
        })
        .map(({ ends, ...edge }): FlowEdge => ({
          ...edge,
          from: Math.min(...ends),
          to: Math.max(...ends),
        })),
      { minLength: nodes, maxLength: 5 * nodes },
    ),
    source: fc.constant(0),
    sink: fc.constant(nodes - 1),
    stop: fc.constantFrom('max-flow' as const, 'while-negative' as const),
  }),
);

const transports = fc
  .record({ rows: fc.integer({ min: 1, max: 8 }), columns: fc.integer({ min: 1, max: 8 }) })
  .chain(({ rows, columns }) =>
    fc.tuple(
      fc.array(fc.nat(4_200), { minLength: rows, maxLength: rows }),
      fc.array(fc.nat(4_200), { minLength: columns, maxLength: columns }),
      fc.array(
        fc.array(fc.integer({ min: -50, max: 99 }), { minLength: columns, maxLength: columns }),
        {
          minLength: rows,
          maxLength: rows,
        },
      ),
    ),
  );

describe('minCostFlow against HiGHS (University of Edinburgh)', () => {
  it('costs the same on random networks in time, with a proof', () => {
    fc.assert(
      fc.property(inTime, (problem) => {
        const answer = minCostFlow(problem);
        const total = problem.stop === 'max-flow' ? answer.total : null;
        expect(answer.cost).toBeCloseTo(costByHighs(problem, total), 3);
        expect(isCheapestFlow(problem, answer)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it('costs the same on random transport problems', () => {
    fc.assert(
      fc.property(transports, ([supply, demand, cost]) => {
        const problem = transport(supply, demand, cost);
        const answer = minCostFlow(problem);
        const sum = (numbers: number[]) => numbers.reduce((running, each) => running + each, 0);
        expect(answer.total).toBe(Math.min(sum(supply), sum(demand)));
        expect(answer.cost).toBeCloseTo(costByHighs(problem, answer.total), 3);
        expect(isCheapestFlow(problem, answer)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

/** Textbook examples from memory; each optimum is confirmed here by HiGHS too. */
const printed: { name: string; problem: FlowProblem; cost: number }[] = [
  {
    name: 'canneries and warehouses (Hillier & Lieberman, Introduction to Operations Research): 152,535',
    problem: transport(
      [75, 125, 100],
      [80, 65, 70, 85],
      [
        [464, 513, 654, 867],
        [352, 416, 690, 791],
        [995, 682, 388, 685],
      ],
    ),
    cost: 152_535,
  },
  {
    name: 'plants and markets (Dantzig 1963, Linear Programming and Extensions, 3.3; cents): 153.675',
    problem: transport(
      [350, 600],
      [325, 300, 275],
      [
        [225, 153, 162],
        [225, 162, 126],
      ],
    ),
    cost: 153_675,
  },
  {
    name: 'power plants and cities (Winston, Operations Research, chapter 7, Powerco): 1,020',
    problem: transport(
      [35, 50, 40],
      [45, 20, 30, 30],
      [
        [8, 6, 10, 9],
        [9, 12, 13, 7],
        [14, 9, 16, 5],
      ],
    ),
    cost: 1_020,
  },
  {
    name: 'machines and jobs (Winston, Operations Research, chapter 7, Machineco): 15 hours',
    problem: transport(
      [1, 1, 1, 1],
      [1, 1, 1, 1],
      [
        [14, 5, 8, 7],
        [2, 12, 6, 5],
        [7, 8, 3, 9],
        [2, 4, 6, 10],
      ],
    ),
    cost: 15,
  },
  {
    name: 'a network of five nodes (documentation of OR-Tools, minimum-cost flow): 150',
    problem: {
      nodes: 7,
      source: 5,
      sink: 6,
      stop: 'max-flow',
      edges: [
        [5, 0, 20, 0],
        [0, 1, 15, 4],
        [0, 2, 8, 4],
        [1, 2, 20, 2],
        [1, 3, 4, 2],
        [1, 4, 10, 6],
        [2, 3, 15, 1],
        [2, 4, 4, 3],
        [3, 4, 20, 2],
        [4, 2, 5, 3],
        [3, 6, 5, 0],
        [4, 6, 15, 0],
      ].map(([from = 0, to = 0, capacity = 0, cost = 0]) => ({ from, to, capacity, cost })),
    },
    cost: 150,
  },
];

describe('minCostFlow on printed examples', () => {
  it.each(printed)('$name', ({ problem, cost }) => {
    const answer = minCostFlow(problem);
    expect(answer.cost).toBe(cost);
    expect(costByHighs(problem, answer.total)).toBeCloseTo(cost, 6);
    expect(isCheapestFlow(problem, answer)).toBe(true);
  });
});
