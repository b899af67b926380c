import type { LinearProgram } from '../../server/core/math/linear-program-form.js';

export interface WorkedProgram {
  readonly name: string;
  readonly program: LinearProgram;
  readonly cost: number;
  /** `null` where the source does not give them or several are as good. */
  readonly values: readonly number[] | null;
  readonly prices: readonly number[] | null;
}

/** Rows Σ factor × variable ≤ most. */
const atMost = (factors: readonly number[], most: number): LinearProgram['rows'][number] => ({
  terms: factors.map((factor, variable) => [variable, factor] as const),
  least: -Infinity,
  most,
});
const notNegative = (variables: number): LinearProgram['bounds'] =>
  Array.from({ length: variables }, () => ({ least: 0, most: Infinity }));

/**
 * Worked examples, all from memory; where the source maximises, costs and prices have the other
 * sign here. Optimal costs were confirmed with HiGHS (the test does so each time).
 */
export const WORKED_PROGRAMS: readonly WorkedProgram[] = [
  {
    name: 'Chvátal 1983, Linear Programming, chapter 2, first example',
    program: {
      costs: [-5, -4, -3],
      bounds: notNegative(3),
      rows: [atMost([2, 3, 1], 5), atMost([4, 1, 2], 11), atMost([3, 4, 2], 8)],
    },
    cost: -13,
    values: [2, 0, 1],
    prices: [-1, 0, -1],
  },
  {
    name: 'Chvátal 1983, chapter 3: cycles under the largest-coefficient rule',
    program: {
      costs: [-10, 57, 9, 24],
      bounds: notNegative(4),
      rows: [
        atMost([0.5, -5.5, -2.5, 9], 0),
        atMost([0.5, -1.5, -0.5, 1], 0),
        atMost([1, 0, 0, 0], 1),
      ],
    },
    cost: -1,
    values: [1, 0, 1, 0],
    prices: null,
  },
  {
    name: 'Beale 1955, Naval Res. Logist. Q. 2:269: cycles under the largest-coefficient rule',
    program: {
      costs: [-0.75, 150, -0.02, 6],
      bounds: notNegative(4),
      rows: [
        atMost([0.25, -60, -0.04, 9], 0),
        atMost([0.5, -90, -0.02, 3], 0),
        atMost([0, 0, 1, 0], 1),
      ],
    },
    cost: -0.05,
    values: [0.04, 0, 1, 0],
    prices: null,
  },
  {
    name: 'Hillier & Lieberman, Introduction to Operations Research, Wyndor Glass',
    program: {
      costs: [-3, -5],
      bounds: notNegative(2),
      rows: [atMost([1, 0], 4), atMost([0, 2], 12), atMost([3, 2], 18)],
    },
    cost: -36,
    values: [2, 6],
    prices: [0, -1.5, -1],
  },
  {
    name: 'Klee & Minty 1972, in three dimensions: the longest way round the cube',
    program: {
      costs: [-100, -10, -1],
      bounds: notNegative(3),
      rows: [atMost([1, 0, 0], 1), atMost([20, 1, 0], 100), atMost([200, 20, 1], 10_000)],
    },
    cost: -10_000,
    values: [0, 0, 10_000],
    prices: [0, 0, -1],
  },
  {
    name: 'scipy.optimize.linprog, documentation example: a free variable and a negative bound',
    program: {
      costs: [-1, 4],
      bounds: [
        { least: -Infinity, most: Infinity },
        { least: -3, most: Infinity },
      ],
      rows: [atMost([-3, 1], 6), atMost([1, 2], 4)],
    },
    cost: -22,
    values: [10, -3],
    prices: null,
  },
  {
    name: 'Dantzig 1963, Linear Programming and Extensions, 3.3: canneries and warehouses',
    program: {
      costs: [225, 153, 162, 225, 162, 126].map((each) => each / 1000),
      bounds: notNegative(6),
      rows: [
        atMost([1, 1, 1, 0, 0, 0], 350),
        atMost([0, 0, 0, 1, 1, 1], 600),
        {
          terms: [
            [0, 1],
            [3, 1],
          ],
          least: 325,
          most: Infinity,
        },
        {
          terms: [
            [1, 1],
            [4, 1],
          ],
          least: 300,
          most: Infinity,
        },
        {
          terms: [
            [2, 1],
            [5, 1],
          ],
          least: 275,
          most: Infinity,
        },
      ],
    },
    cost: 153.675,
    values: null,
    prices: null,
  },
];

export interface WorkedWholeProgram {
  readonly name: string;
  readonly program: LinearProgram;
  /** Least cost without and with the demand for whole variables. */
  readonly cost: number;
  readonly wholeCost: number;
  readonly wholeValues: readonly number[];
}

/** Both from memory, from textbooks of operations research; confirmed as above. */
export const WORKED_WHOLE_PROGRAMS: readonly WorkedWholeProgram[] = [
  {
    name: 'Winston, Operations Research, Telfa tables and chairs',
    program: {
      costs: [-8, -5],
      bounds: notNegative(2),
      rows: [atMost([1, 1], 6), atMost([9, 5], 45)],
    },
    cost: -41.25,
    wholeCost: -40,
    wholeValues: [5, 0],
  },
  {
    name: 'Taha, Operations Research, after the Reddy Mikks paint example',
    program: {
      costs: [-5, -4],
      bounds: notNegative(2),
      rows: [atMost([6, 4], 24), atMost([1, 2], 6)],
    },
    cost: -21,
    wholeCost: -20,
    wholeValues: [4, 0],
  },
];
