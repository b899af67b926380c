import fc from 'fast-check';
import type { Highs } from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FeasibilityProblem } from '../../server/core/compare/feasibility-problem.js';
import { fewestWrong } from '../../server/core/compare/joint-feasibility.js';
import type { LinearProgram } from '../../server/core/math/linear-program-form.js';
import { solveWithHighs, startHighs } from '../published/solve-with-highs.js';

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

/**
 * The definition word for word, nothing merged or left out: for each observer every true bird is put
 * on some line, right or wrong, or missed, and every bird on a line is a true one or added.
 */
function plainProgram({ observers, lines, kinds }: FeasibilityProblem): {
  program: LinearProgram;
  whole: number[];
} {
  const costs: number[] = [];
  const bounds: { least: number; most: number }[] = [];
  const rows: LinearProgram['rows'][number][] = [];
  const variable = (cost: number, least = 0, most = Infinity): number => {
    bounds.push({ least, most });
    return costs.push(cost) - 1;
  };
  const truth = kinds.map(() => variable(0));
  for (let observer = 0; observer < observers; observer += 1) {
    const own = lines.flatMap((line, index) => (line.observer === observer ? [index] : []));
    const numbers = own.map((index) => variable(0, lines[index]?.low, lines[index]?.high));
    const added = own.map(() => variable(1));
    const put = kinds.map((kind) =>
      own.map((index) => variable(kind.lines.includes(index) ? 0 : 1)),
    );
    kinds.forEach((kind, k) => {
      const missed = variable(kind.dueTo.includes(observer) ? 1 : 0);
      const terms = [...(put[k] ?? []), missed].map((each) => [each, 1] as const);
      rows.push({ terms: [...terms, [truth[k] ?? 0, -1]], least: 0, most: 0 });
    });
    own.forEach((_, l) => {
      const terms = kinds.map((_kind, k) => [put[k]?.[l] ?? 0, 1] as const);
      const others = [[added[l] ?? 0, 1] as const, [numbers[l] ?? 0, -1] as const];
      rows.push({ terms: [...terms, ...others], least: 0, most: 0 });
    });
  }
  return { program: { costs, bounds, rows }, whole: truth };
}

interface Size {
  readonly species: number;
  readonly observers: number;
  readonly lines: number;
  readonly birds: number;
}

/** Lines for one species, for pairs and for groups, exact or with a span, now and then without end. */
function anyProblem({ species, observers, lines, birds }: Size): fc.Arbitrary<FeasibilityProblem> {
  const set = fc.oneof(
    { weight: 3, arbitrary: fc.nat(species - 1).map((each) => [each]) },
    {
      weight: 2,
      arbitrary: fc.uniqueArray(fc.nat(species - 1), { minLength: 2, maxLength: 2 }),
    },
    {
      weight: 1,
      arbitrary: fc.uniqueArray(fc.nat(species - 1), { minLength: 2, maxLength: species }),
    },
  );
  const line = fc
    .record({
      set,
      number: fc.nat(birds),
      factor: fc.constantFrom(1, 1, 1.1, 1.5),
      open: fc.nat(9).map((draw) => draw === 0),
    })
    .map(({ set: members, number, factor, open }) => ({
      members,
      low: Math.ceil(number / factor),
      high: open ? Infinity : Math.floor(number * factor),
    }));
  const tally = fc.record({
    lines: fc.array(line, { minLength: Math.ceil(lines / 2), maxLength: lines }),
    notDue: fc.oneof(
      { weight: 3, arbitrary: fc.constant<number[]>([]) },
      { weight: 1, arbitrary: fc.uniqueArray(fc.nat(species - 1)) },
    ),
  });
  return fc.array(tally, { minLength: 2, maxLength: observers }).map((tallies) => {
    const all = tallies.flatMap(({ lines: own }, observer) =>
      own.map((each) => ({ observer, ...each })),
    );
    return {
      observers: tallies.length,
      lines: all.map(({ observer, low, high }) => ({ observer, low, high })),
      kinds: Array.from({ length: species }, (_, each) => ({
        lines: all.flatMap(({ members }, index) => (members.includes(each) ? [index] : [])),
        dueTo: tallies.flatMap(({ notDue }, observer) => (notDue.includes(each) ? [] : [observer])),
      })),
    };
  });
}

describe('the fewest wrong birds equal what HiGHS finds for whole truths', () => {
  it.each([
    { species: 4, observers: 4, lines: 6, birds: 12, runs: 200 },
    { species: 8, observers: 4, lines: 10, birds: 300, runs: 200 },
    { species: 12, observers: 6, lines: 14, birds: 1000, runs: 60 },
    { species: 12, observers: 5, lines: 14, birds: 1_000_000, runs: 20 },
    { species: 30, observers: 6, lines: 30, birds: 3000, runs: 20 },
  ])(
    '$runs of up to $species species, $observers observers, $lines lines of up to $birds birds',
    ({ runs, ...size }) => {
      fc.assert(
        fc.property(anyProblem(size), (problem) => {
          const { program, whole } = plainProgram(problem);
          const outside = solveWithHighs(highs, program, whole);
          if (outside.kind !== 'optimal') throw new Error(`HiGHS says ${outside.kind}`);
          expect(fewestWrong(problem)).toBe(Math.round(outside.cost));
        }),
        { numRuns: runs },
      );
    },
    300_000,
  );
});
