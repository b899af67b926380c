import { sum } from '../math/sum.js';

/** So many units that are known only to be of one of several categories. */
export interface PartialCount {
  /** Places in the list of categories, at least one, none twice. */
  readonly categories: readonly number[];
  /** 0 or more. */
  readonly number: number;
}

/** Turns the counts that are expected of each category into the probabilities that fit them best. */
export type Maximisation = (expected: readonly number[]) => readonly number[];

export interface EmFit {
  readonly probabilities: readonly number[];
  /** Units of each category, those that were known in part shared out. */
  readonly expected: readonly number[];
}

/** Probabilities that move by less than this have settled. */
const SETTLED = 1e-13;
const MOST_STEPS = 20_000;

/**
 * Maximum likelihood from counts of which some are classified only in part, by the EM algorithm
 * (Dempster, Laird & Rubin 1977, J. R. Stat. Soc. B 39:1). It takes it that whether a unit was
 * classified in full does not depend on what it was.
 *
 * Edge cases: stops after 20,000 steps, which only data that say next to nothing of some category
 * ask for. Counts none of whose categories has any probability at the start stay unshared.
 *
 * @param counts totals need not be whole
 * @param start one probability a category; a category that starts at 0 stays there
 * @param maximise each category's share, unless the categories' probabilities hang together
 * @example
 * expectationMaximisation(
 *   [{ categories: [0], number: 30 }, { categories: [1], number: 10 }, { categories: [0, 1], number: 20 }],
 *   [0.5, 0.5],
 * ).expected // [45, 15]
 */
export function expectationMaximisation(
  counts: readonly PartialCount[],
  start: readonly number[],
  maximise: Maximisation = sharesOf,
): EmFit {
  let probabilities = start;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = maximise(expectedCounts(counts, probabilities));
    const moved = next.reduce(
      (most, value, index) => Math.max(most, Math.abs(value - (probabilities[index] ?? 0))),
      0,
    );
    probabilities = next;
    if (moved < SETTLED) break;
  }
  return { probabilities, expected: expectedCounts(counts, probabilities) };
}

/** The E-step: each count shared out in proportion to the probabilities of its categories. */
export function expectedCounts(
  counts: readonly PartialCount[],
  probabilities: readonly number[],
): number[] {
  const expected = probabilities.map(() => 0);
  for (const { categories, number } of counts) {
    const total = categories.reduce((running, each) => running + (probabilities[each] ?? 0), 0);
    if (total === 0) continue;
    for (const each of categories) {
      expected[each] = (expected[each] ?? 0) + (number * (probabilities[each] ?? 0)) / total;
    }
  }
  return expected;
}

/**
 * ln of the likelihood of the counts but for a constant, Σ n ln Σ p: what the algorithm never lowers.
 * Its second derivative at the end, turned round, is the information of Louis (1982, J. R. Stat. Soc.
 * B 44:226). −∞ where a count with units has no probability.
 */
export function logLikelihoodOf(
  counts: readonly PartialCount[],
  probabilities: readonly number[],
): number {
  return sum(
    counts.map(({ categories, number }) =>
      number === 0 ? 0 : number * Math.log(sum(categories.map((each) => probabilities[each] ?? 0))),
    ),
  );
}

/** Each category's share of all; of nothing, nothing. */
function sharesOf(expected: readonly number[]): number[] {
  const total = sum(expected);
  return expected.map((number) => (total === 0 ? 0 : number / total));
}
