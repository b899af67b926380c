import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestWrong } from '../../server/core/compare/joint-feasibility.js';
import {
  leastOf,
  problemOf,
  truths,
  wrongRecords,
  type SmallTally,
} from './joint-feasibility-exhaustive.js';

/** Every tally of exact numbers, complete and seeking all, with at most so many birds. */
function talliesUpTo(species: number, birds: number): SmallTally[] {
  const sets = 2 ** species - 1;
  return truths(sets, birds).map((numbers) => ({
    lines: numbers.flatMap((number, index) =>
      number > 0 ? [{ set: index + 1, low: number, high: number }] : [],
    ),
    due: sets,
  }));
}

const birdsOf = (tally: SmallTally): number => tally.lines.reduce((sum, { high }) => sum + high, 0);

/** Which number a tally has after its species are renamed. */
function renamings(tallies: readonly SmallTally[], species: number): number[][] {
  const keyOf = (lines: SmallTally['lines'], rename: readonly number[]): string =>
    lines
      .map(({ set, low }) => {
        const renamed = rename.reduce(
          (sum, to, from) => sum + (set & (1 << from) ? 1 << to : 0),
          0,
        );
        return `${renamed}:${low}`;
      })
      .sort()
      .join(' ');
  const same = Array.from({ length: species }, (_, index) => index);
  const numberOf = new Map(tallies.map(({ lines }, index) => [keyOf(lines, same), index]));
  return permutations(same).map((rename) =>
    tallies.map(({ lines }) => numberOf.get(keyOf(lines, rename)) ?? -1),
  );
}

function permutations(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) =>
    permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]),
  );
}

/** Every choice of tallies once: not again with observers or species in another order. */
function* cases(
  tallies: readonly SmallTally[],
  species: number,
  observers: number,
  birds: number,
): Generator<number[]> {
  const renamed = renamings(tallies, species);
  const isFirst = (chosen: readonly number[]): boolean =>
    renamed.every((rename) => {
      const other = chosen.map((index) => rename[index] ?? -1).sort((a, b) => a - b);
      const apart = other.findIndex((value, index) => value !== chosen[index]);
      return apart === -1 || (other[apart] ?? 0) > (chosen[apart] ?? 0);
    });
  function* extend(chosen: readonly number[], left: number): Generator<number[]> {
    if (chosen.length === observers) {
      if (isFirst(chosen)) yield [...chosen];
      return;
    }
    for (let index = chosen.at(-1) ?? 0; index < tallies.length; index += 1) {
      const own = birdsOf(tallies[index] ?? { lines: [], due: 0 });
      if (own <= left) yield* extend([...chosen, index], left - own);
    }
  }
  yield* extend([], birds);
}

interface Checked {
  readonly cases: number;
  readonly wrong: readonly { tallies: readonly SmallTally[]; found: number; least: number }[];
}

/** Holds the core against the slow way for every case; a truth has no more birds than all tallies. */
function checkAll(species: number, observers: number, each: number, together: number): Checked {
  const tallies = talliesUpTo(species, Math.min(each, together));
  const tables = new Map<number, number[]>();
  const all = truths(species, Math.min(each * observers, together));
  const tableOf = (index: number): number[] => {
    const known = tables.get(index);
    if (known !== undefined) return known;
    const table = wrongRecords(tallies[index] ?? { lines: [], due: 0 }, all);
    tables.set(index, table);
    return table;
  };
  const wrong: Checked['wrong'][number][] = [];
  let count = 0;
  for (const chosen of cases(tallies, species, observers, together)) {
    count += 1;
    const own = chosen.flatMap((index) => tallies[index] ?? []);
    const least = leastOf(chosen.map(tableOf));
    const found = fewestWrong(problemOf(species, own));
    if (found !== least) wrong.push({ tallies: own, found, least });
  }
  return { cases: count, wrong };
}

describe('the fewest wrong birds equal an exhaustive search', () => {
  // How many cases differ by more than the order of species and observers was counted here.
  it.each([
    { species: 2, observers: 3, each: 6, together: 18, differing: 51_850 },
    { species: 3, observers: 3, each: 6, together: 6, differing: 9_804 },
    { species: 3, observers: 2, each: 4, together: 8, differing: 10_041 },
  ])(
    'all of $species species, $observers observers, $each birds each, $together together',
    ({ species, observers, each, together, differing }) => {
      const { cases: count, wrong } = checkAll(species, observers, each, together);
      expect(wrong).toEqual([]);
      expect(count).toBe(differing);
    },
    300_000,
  );

  it('random ones of 3 species, 3 observers, 6 birds each', () => {
    const tables = new Map<SmallTally, number[]>();
    // Every 17th of the 1,716 tallies, since the slow way takes long for each.
    const tallies = talliesUpTo(3, 6).filter((_, index) => index % 17 === 0);
    const all = truths(3, 18);
    const any = fc.constantFrom(...tallies);
    const tableOf = (tally: SmallTally): number[] => {
      const table = tables.get(tally) ?? wrongRecords(tally, all);
      tables.set(tally, table);
      return table;
    };
    fc.assert(
      fc.property(fc.tuple(any, any, any), (three) => {
        expect(fewestWrong(problemOf(3, three))).toBe(leastOf(three.map(tableOf)));
      }),
      { numRuns: 1500 },
    );
  }, 300_000);

  it('random ones with counting error, partial tallies and scopes', () => {
    const line = fc
      .record({ set: fc.integer({ min: 1, max: 7 }), low: fc.nat(2), over: fc.nat(1) })
      .map(({ set, low, over }) => ({ set, low, high: low + over }));
    const tally: fc.Arbitrary<SmallTally> = fc.record({
      lines: fc.array(line, { maxLength: 3 }),
      due: fc.nat(7),
    });
    const most = ({ lines }: SmallTally): number => lines.reduce((sum, { high }) => sum + high, 0);
    fc.assert(
      fc.property(fc.array(tally, { minLength: 2, maxLength: 3 }), (tallies) => {
        const birds = tallies.reduce((sum, each) => sum + most(each), 0);
        fc.pre(birds <= 12);
        const all = truths(3, birds);
        const least = leastOf(tallies.map((each) => wrongRecords(each, all)));
        expect(fewestWrong(problemOf(3, tallies))).toBe(least);
      }),
      { numRuns: 500 },
    );
  });
});
