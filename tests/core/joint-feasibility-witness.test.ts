import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FeasibilityProblem } from '../../server/core/compare/feasibility-problem.js';
import { pairConflict } from '../../server/core/compare/feasibility-pair.js';
import { feasibilityProgram } from '../../server/core/compare/feasibility-program.js';
import {
  severalConflict,
  type SeveralConflict,
} from '../../server/core/compare/feasibility-several.js';
import { fewestWrong } from '../../server/core/compare/joint-feasibility.js';
import { linearProgram } from '../../server/core/math/linear-program.js';
import { aCount, aProtocol, aTally, type ShortLine } from './a-count.js';
import { problemOf, truths, type SmallTally, type Truth } from './joint-feasibility-exhaustive.js';
import { reconcileInEnglish as reconcile } from '../support/reconcile-in-english.js';

const NAMES = ['Ada Berg', 'Bo Lind', 'Cy Moss', 'Di Nye'];

/** Tallies of o1, o2 … of one section, and what the result says of their cell. */
function cellOf(tallies: readonly (readonly ShortLine[])[], more = {}) {
  const count = aCount(tallies.map((lines, index) => aTally(`o${index + 1}`, lines, more)));
  const people = count.people.map((person, index) => ({ ...person, name: NAMES[index] ?? '' }));
  const cell = reconcile({ ...count, people }, [], aProtocol()).cells[0];
  if (cell === undefined) throw new Error('no cell');
  return cell;
}

describe('the sentence that says why no truth fits', () => {
  it('names the look-alikes that take the room', () => {
    const cell = cellOf([
      [
        ['Lesser Scaup', 15],
        ['Greater Scaup', 2],
      ],
      [['Greater Scaup', 19]],
    ]);
    expect(cell.birdsInConflict).toBe(17);
    expect(cell.witness).toBe(
      "Bo Lind's 19 Greater Scaup cannot all be right if Ada Berg's 15 Lesser Scaup are: " +
        'Bo Lind has at least 19 Greater Scaup, but Ada Berg leaves room for at most 2.',
    );
  });

  it('counts room on every line that could hold the birds', () => {
    const cell = cellOf([
      [
        ['Greater Scaup', 3],
        ['Greater/Lesser Scaup', 4],
        ['Aythya sp.', 5],
      ],
      [['Greater Scaup', 19]],
    ]);
    expect(cell.witness).toBe(
      'Bo Lind has at least 19 Greater Scaup, but Ada Berg leaves room for at most 12.',
    );
  });

  it('says so where counting error was given its due', () => {
    // Block counts at 20 %: 1,000 is at least 1,000 / e^(2 · 0.198) = 673, and 100 at most 148.
    const block = (number: number): ShortLine => ['Mallard', number, { method: 'block' }];
    expect(cellOf([[block(1000)], [block(100)]]).witness).toBe(
      'Even within counting error Ada Berg has at least 673 Mallard, but Bo Lind leaves room for at most 148.',
    );
  });

  it('names several who fit in twos but not all together', () => {
    const cell = cellOf([
      [['Greater/Lesser Scaup', 10]],
      [['Lesser Scaup/Ring-necked Duck', 10]],
      [['Greater Scaup/Ring-necked Duck', 10]],
    ]);
    // Each pair of observers leaves one species, which the third does not have.
    expect(cell.birdsInConflict).toBe(10);
    expect(cell.witness).toBe(
      'Any two of Ada Berg, Bo Lind and Cy Moss fit one truth, but not all three together: ' +
        'Cy Moss has at least 10 Ring-necked Duck/Greater Scaup, ' +
        'but Ada Berg has no Ring-necked Duck and Bo Lind has no Greater Scaup.',
    );
  });

  it('names them where only whole birds do not fit, without numbers that would not show it', () => {
    const pairs = (one: string, other: string): ShortLine[] => [
      [one, 1],
      [other, 1],
    ];
    const cell = cellOf([
      pairs('Redhead/Canvasback', 'Greater/Lesser Scaup'),
      pairs('Redhead/Greater Scaup', 'Canvasback/Lesser Scaup'),
      pairs('Redhead/Lesser Scaup', 'Canvasback/Greater Scaup'),
    ]);
    expect(cell.birdsInConflict).toBe(1);
    expect(cell.witness).toBe(
      'Any two of Ada Berg, Bo Lind and Cy Moss fit one truth, but not all three together.',
    );
  });

  it('is not there where one truth fits, nor for what a partial tally may not have seen', () => {
    expect(cellOf([[['Mallard', 5]], [['Mallard', 5]]]).witness).toBeNull();
    const partial = cellOf([[['Mallard', 5]], []], { coverage: 0.5 });
    expect([partial.birdsInConflict, partial.witness]).toEqual([0, null]);
  });
});

const line = fc
  .record({ set: fc.integer({ min: 1, max: 15 }), low: fc.nat(5), over: fc.nat(2) })
  .map(({ set, low, over }) => ({ set, low, high: low + over }));
const tally: fc.Arbitrary<SmallTally> = fc.record({
  lines: fc.array(line, { maxLength: 4 }),
  due: fc.constantFrom(15, 15, 15, 7, 0),
});

/** Whether a truth meets all claims, each counted again from the tallies. */
function satisfies(truth: Truth, found: SeveralConflict, tallies: readonly SmallTally[]): boolean {
  const sum = (kinds: readonly number[]): number =>
    kinds.reduce((running, kind) => running + (truth[kind] ?? 0), 0);
  const maskOf = (kinds: readonly number[]): number =>
    kinds.reduce((mask, kind) => mask | (1 << kind), 0);
  return (
    found.atLeast.every(({ observer, kinds }) => {
      const own = tallies[observer]?.lines ?? [];
      const within = own.filter(({ set }) => (set & ~maskOf(kinds)) === 0);
      return sum(kinds) >= within.reduce((running, { low }) => running + low, 0);
    }) &&
    found.atMost.every(({ observer, kinds }) => {
      const { lines: own = [], due = 0 } = tallies[observer] ?? {};
      const touching = own.filter(({ set }) => (set & maskOf(kinds)) !== 0);
      const room = touching.reduce((running, { high }) => running + high, 0);
      return (due & maskOf(kinds)) !== maskOf(kinds) || sum(kinds) <= room;
    })
  );
}

describe('what stands against what', () => {
  it('is found between two observers exactly when they do not fit one truth', () => {
    fc.assert(
      fc.property(tally, tally, (one, other) => {
        const problem = problemOf(4, [one, other]);
        const found = pairConflict(problem, 0, 1) ?? pairConflict(problem, 1, 0);
        expect(found !== null).toBe(fewestWrong(problem) > 0);
      }),
      { numRuns: 1000 },
    );
  });

  it('is worth its birds: more at least than at most, and no more than must be wrong', () => {
    fc.assert(
      fc.property(tally, tally, (one, other) => {
        const problem = problemOf(4, [one, other]);
        const found = pairConflict(problem, 0, 1);
        fc.pre(found !== null);
        const sum = (lines: readonly number[], side: 'low' | 'high'): number =>
          lines.reduce((running, each) => running + (problem.lines[each]?.[side] ?? 0), 0);
        expect(found.atLeast).toBe(sum(found.lines, 'low'));
        expect(found.atMost).toBe(sum(found.room, 'high'));
        const sets = [...one.lines, ...other.lines].map(({ set }) => set);
        const species = found.lines.reduce((union, each) => union | (sets[each] ?? 0), 0);
        const touching = sets.flatMap((set, index) =>
          index >= one.lines.length && (set & species) !== 0 ? [index] : [],
        );
        expect(found.room).toEqual(touching);
        expect(found.atLeast).toBeGreaterThan(found.atMost);
        expect(found.atLeast - found.atMost).toBeLessThanOrEqual(fewestWrong(problem));
      }),
      { numRuns: 1000 },
    );
  });

  it('names, of several, only those who are needed for it', () => {
    fc.assert(
      fc.property(fc.array(tally, { minLength: 3, maxLength: 4 }), (tallies) => {
        checkSeveral(tallies);
      }),
      { numRuns: 200 },
    );
  });

  it('says what three have where every two fit', () => {
    fc.assert(
      fc.property(fc.array(cutInTwo, { minLength: 3, maxLength: 4 }), (tallies) => {
        const fit = tallies.every((one, index) =>
          tallies.slice(0, index).every((other) => fewestWrong(problemOf(4, [one, other])) === 0),
        );
        fc.pre(fit && fewestWrong(problemOf(4, tallies)) > 0);
        expect(checkSeveral(tallies)?.observers.length).toBeGreaterThan(2);
      }),
      { numRuns: 100 },
    );
  });
});

/** Six birds of four species, cut into two lines. */
const cutInTwo: fc.Arbitrary<SmallTally> = fc
  .tuple(fc.integer({ min: 1, max: 14 }), fc.nat(6))
  .map(([set, low]) => ({
    lines: [
      { set, low, high: low },
      { set: 15 - set, low: 6 - low, high: 6 - low },
    ],
    due: 15,
  }));

function checkSeveral(tallies: readonly SmallTally[]): SeveralConflict | null {
  const problem = problemOf(4, tallies);
  const found = severalConflict(problem);
  expect(found === null).toBe(fewestWrong(problem) === 0);
  if (found === null) return null;
  const alone = (observers: readonly number[]): FeasibilityProblem =>
    problemOf(
      4,
      observers.flatMap((each) => tallies[each] ?? []),
    );
  expect(fewestWrong(alone(found.observers))).toBeGreaterThan(0);
  for (const each of found.observers) {
    const others = found.observers.filter((other) => other !== each);
    expect(fewestWrong(alone(others))).toBe(0);
  }
  if (found.atLeast.length === 0) {
    // Not so simple: half birds fit, whole ones do not.
    const answer = linearProgram(feasibilityProgram(alone(found.observers)).program);
    expect(answer.kind === 'optimal' ? answer.cost : null).toBeCloseTo(0, 6);
  } else {
    expect(truths(4, 20).filter((truth) => satisfies(truth, found, tallies))).toEqual([]);
  }
  return found;
}
