import type { FeasibilityProblem } from '../../server/core/compare/feasibility-problem.js';

/** One observer: lines as bit masks of species, with all whole numbers that each may stand for. */
export interface SmallTally {
  readonly lines: readonly { readonly set: number; readonly low: number; readonly high: number }[];
  /** Bit mask of the species whose birds are missed where they are on no line. */
  readonly due: number;
}

export type Truth = readonly number[];

/** Every way to have at most so many birds of so many species. */
export function truths(species: number, most: number): Truth[] {
  if (species === 0) return [[]];
  return Array.from({ length: most + 1 }, (_, birds) =>
    truths(species - 1, most - birds).map((rest) => [birds, ...rest]),
  ).flat();
}

/**
 * The fewest wrong records of one observer for every truth, the slow way: every placing of true
 * birds on lines that can hold them is tried. What is then missed and what is then added are all the
 * pairs worth keeping; of them as many as possible are one record, a bird on a wrong line.
 */
export function wrongRecords(tally: SmallTally, all: readonly Truth[]): number[] {
  type Ends = readonly (readonly [missedDue: number, added: number])[];
  const memo = tally.lines.map(() => new Map<number, Ends>());
  const ends = (index: number, left: Truth): Ends => {
    const line = tally.lines[index];
    if (line === undefined) {
      return [[left.reduce((sum, birds, s) => sum + (tally.due & (1 << s) ? birds : 0), 0), 0]];
    }
    const key = left.reduce((digits, birds) => digits * 64 + birds, 0);
    const known = memo[index]?.get(key);
    if (known !== undefined) return known;
    const room = left.map((birds, s) => (line.set & (1 << s) ? birds : 0));
    const found = placings(room, line.high).flatMap((placed) => {
      const birds = placed.reduce((sum, each) => sum + each, 0);
      const added = Math.max(0, line.low - birds);
      return ends(
        index + 1,
        left.map((each, s) => each - (placed[s] ?? 0)),
      ).map(([missed, rest]) => [missed, rest + added] as const);
    });
    const kept = worthKeeping(found);
    memo[index]?.set(key, kept);
    return kept;
  };
  return all.map((truth) =>
    Math.min(...ends(0, truth).map(([missed, added]) => missed + added - Math.min(missed, added))),
  );
}

function placings(room: readonly number[], most: number): number[][] {
  const [first, ...others] = room;
  if (first === undefined) return [[]];
  return Array.from({ length: Math.min(first, most) + 1 }, (_, birds) =>
    placings(others, most - birds).map((rest) => [birds, ...rest]),
  ).flat();
}

function worthKeeping(
  pairs: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] {
  const least: number[] = [];
  for (const [missed, added] of pairs) {
    least[missed] = Math.min(added, least[missed] ?? Infinity);
  }
  const kept: (readonly [number, number])[] = [];
  // Fewest missed first: one more missed is worth it only where fewer are added.
  least.forEach((added, missed) => {
    if (added < (kept.at(-1)?.[1] ?? Infinity)) kept.push([missed, added]);
  });
  return kept;
}

/** The least sum over observers that some truth leaves. */
export function leastOf(tables: readonly (readonly number[])[]): number {
  const [first = []] = tables;
  return Math.min(
    ...first.map((_, truth) => tables.reduce((sum, table) => sum + (table[truth] ?? 0), 0)),
  );
}

/** The same tallies as the core takes them, each species a kind of its own. */
export function problemOf(species: number, tallies: readonly SmallTally[]): FeasibilityProblem {
  const lines = tallies.flatMap(({ lines: own }, observer) =>
    own.map(({ set, low, high }) => ({ observer, set, low, high })),
  );
  return {
    observers: tallies.length,
    lines: lines.map(({ observer, low, high }) => ({ observer, low, high })),
    kinds: Array.from({ length: species }, (_, s) => ({
      lines: lines.flatMap(({ set }, index) => (set & (1 << s) ? [index] : [])),
      dueTo: tallies.flatMap(({ due }, observer) => (due & (1 << s) ? [observer] : [])),
    })),
  };
}
