import type { LinearRow } from '../math/linear-program-form.js';
import { linearProgram } from '../math/linear-program.js';
import { UnionFind } from '../math/union-find.js';
import type { FeasibilityProblem, SpannedLine } from './feasibility-problem.js';
import { feasibilityProgram } from './feasibility-program.js';
import { fewestWrong } from './joint-feasibility.js';

/** One observer's birds of some kinds. */
export interface KindsClaim {
  readonly observer: number;
  /** Kinds, by index, rising. */
  readonly kinds: readonly number[];
  readonly birds: number;
}

/** Observers of whom any but one fit one truth, but not all together, and why. */
export interface SeveralConflict {
  readonly observers: readonly number[];
  /** What some have at least and others at most, which no truth satisfies; empty where it is not so simple. */
  readonly atLeast: readonly KindsClaim[];
  readonly atMost: readonly KindsClaim[];
}

/** A price this near to another is the same. */
const SAME = 1e-6;

/**
 * The observers who stand against each other when the conflict is not between any two, taking out
 * one after the other who is not needed for it. Why they do is read from the prices of the linear
 * programme (its dual solution): who pays for a bird more of some kinds has at most so many of them,
 * who pays for a bird less has at least so many. Claims that the contradiction does not need are left
 * out, and that the rest is one is checked.
 */
export function severalConflict(problem: FeasibilityProblem): SeveralConflict | null {
  if (fewestWrong(problem) === 0) return null;
  let observers = Array.from({ length: problem.observers }, (_, index) => index);
  for (const each of observers) {
    const fewer = observers.filter((other) => other !== each);
    if (fewestWrong(restricted(problem, fewer)) > 0) observers = fewer;
  }
  const claims = pricedClaims(worstPart(restricted(problem, observers)), observers);
  return { observers, ...onlyNeeded(claims, problem.kinds.length) };
}

/** Of kinds that share no lines with others, those that are most birds wrong by themselves. */
function worstPart(problem: FeasibilityProblem): FeasibilityProblem {
  const { lines, kinds } = problem;
  const components = new UnionFind(kinds.length);
  kinds.forEach((kind, index) => {
    kinds.slice(0, index).forEach((earlier, other) => {
      if (kind.lines.some((line) => earlier.lines.includes(line))) components.join(index, other);
    });
  });
  const parts = components.sets().map((members) => {
    const inside = new Set(members.flatMap((member) => kinds[member]?.lines ?? []));
    return {
      ...problem,
      lines: lines.map((line, index) => (inside.has(index) ? line : unasked(line))),
      kinds: kinds.map((kind, index) =>
        members.includes(index) ? kind : { lines: [], dueTo: [] },
      ),
    };
  });
  const wrong = parts.map(fewestWrong);
  return parts[wrong.indexOf(Math.max(...wrong))] ?? problem;
}

/** The line in its place, asking for nothing. */
function unasked(line: SpannedLine): SpannedLine {
  return { ...line, low: 0, high: Infinity };
}

/** The problem of some of the observers alone. Lines and kinds keep their places. */
function restricted(
  { observers, lines, kinds }: FeasibilityProblem,
  kept: readonly number[],
): FeasibilityProblem {
  return {
    observers,
    lines: lines.map((line) => (kept.includes(line.observer) ? line : unasked(line))),
    kinds: kinds.map((kind) => ({
      lines: kind.lines.filter((line) => kept.includes(lines[line]?.observer ?? -1)),
      dueTo: kind.dueTo.filter((observer) => kept.includes(observer)),
    })),
  };
}

type Claims = Pick<SeveralConflict, 'atLeast' | 'atMost'>;

/**
 * What each observer has at least and at most of the kinds that they pay for, at each height of the
 * price. If the programme costs anything, no true numbers satisfy all of these: what tallies allow is
 * a generalised polymatroid, whose least and most over any prices are sums over such steps (Frank &
 * Tardos 1988, Math. Programming 42:489).
 */
function pricedClaims(problem: FeasibilityProblem, observers: readonly number[]): Claims {
  const { program, observerOfRow } = feasibilityProgram(problem, 'twice');
  const answer = linearProgram(program);
  if (answer.kind !== 'optimal') return { atLeast: [], atMost: [] };
  const prices = new Map(observers.map((observer) => [observer, problem.kinds.map(() => 0)]));
  program.rows.forEach(({ terms }, row) => {
    const own = prices.get(observerOfRow[row] ?? -1);
    for (const [variable, factor] of terms) {
      if (own === undefined || variable >= own.length) continue;
      own[variable] = (own[variable] ?? 0) - factor * (answer.prices[row] ?? 0);
    }
  });
  const each = [...prices].sort(([one], [other]) => one - other);
  return {
    atLeast: each.flatMap(([observer, own]) =>
      steps(own.map((price) => -price)).map((kinds) => ({
        observer,
        kinds,
        birds: leastOf(problem, observer, kinds),
      })),
    ),
    atMost: each.flatMap(([observer, own]) =>
      steps(own).map((kinds) => ({ observer, kinds, birds: mostOf(problem, observer, kinds) })),
    ),
  };
}

/** For each price over 0: the kinds that cost so much or more. */
function steps(prices: readonly number[]): number[][] {
  const heights: number[] = [];
  for (const price of [...prices].sort((one, other) => one - other)) {
    if (price > SAME + (heights.at(-1) ?? 0)) heights.push(price);
  }
  return heights.map((height) =>
    prices.flatMap((price, kind) => (price > height - SAME ? [kind] : [])),
  );
}

/** Takes out one claim after the other that is not needed for the contradiction. */
function onlyNeeded(claims: Claims, kinds: number): Claims {
  if (!contradict(claims, kinds)) return { atLeast: [], atMost: [] };
  let needed = claims;
  for (const claim of claims.atLeast) {
    const fewer = { ...needed, atLeast: needed.atLeast.filter((each) => each !== claim) };
    if (contradict(fewer, kinds)) needed = fewer;
  }
  for (const claim of claims.atMost) {
    const fewer = { ...needed, atMost: needed.atMost.filter((each) => each !== claim) };
    if (contradict(fewer, kinds)) needed = fewer;
  }
  return needed;
}

/** Whether no numbers of the kinds, whole or not, satisfy all claims. */
function contradict({ atLeast, atMost }: Claims, kinds: number): boolean {
  const free = Array.from({ length: kinds }, () => ({ least: 0, most: Infinity }));
  const sum = (claim: KindsClaim): LinearRow['terms'] => claim.kinds.map((kind) => [kind, 1]);
  const rows = [
    ...atLeast.map((claim) => ({ terms: sum(claim), least: claim.birds, most: Infinity })),
    ...atMost.map((claim) => ({ terms: sum(claim), least: 0, most: claim.birds })),
  ];
  return linearProgram({ costs: free.map(() => 0), bounds: free, rows }).kind === 'infeasible';
}

/** Birds on the observer's lines that can only be of these kinds. */
function leastOf(problem: FeasibilityProblem, observer: number, kinds: readonly number[]): number {
  return problem.lines.reduce((sum, line, index) => {
    const certain =
      line.observer === observer &&
      problem.kinds.every((kind, each) => !kind.lines.includes(index) || kinds.includes(each));
    return certain ? sum + line.low : sum;
  }, 0);
}

/** Birds on the observer's lines that could be of these kinds; no limit where they need not be seen. */
function mostOf(problem: FeasibilityProblem, observer: number, kinds: readonly number[]): number {
  const all = kinds.flatMap((each) => problem.kinds[each] ?? []);
  if (!all.every((kind) => kind.dueTo.includes(observer))) return Infinity;
  return problem.lines.reduce(
    (sum, line, index) =>
      line.observer === observer && all.some((kind) => kind.lines.includes(index))
        ? sum + line.high
        : sum,
    0,
  );
}
