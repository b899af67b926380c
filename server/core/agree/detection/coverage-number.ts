import type { Interval } from '../../math/bootstrap.js';
import { derivativesOf } from '../../math/derivatives.js';
import { unseenInterval } from './unseen-interval.js';

export interface CoverageNumber {
  readonly seen: number;
  /** Share of all individuals that are of a kind that was seen, among the rare kinds. */
  readonly coverage: number;
  readonly value: number;
  readonly standardError: number;
  /** Log-normal on the unseen. */
  readonly interval: Interval;
}

/** A kind with more individuals than this is surely seen, and says nothing of the others (Chao & Lee). */
const RARE = 10;

/**
 * Number of kinds there were by the coverage of the sample (Chao & Lee 1992, J. Am. Stat. Assoc. 87:210;
 * known as the abundance-based coverage estimator): the rare kinds divided by their coverage, 1 less the
 * share of their individuals that are the only one of their kind, and more where kinds differ.
 *
 * Purpose: species of a count from numbers of individuals, beside the lower bound of Chao. `null` where
 * all individuals of rare kinds are the only one of theirs: nothing is covered. Standard error: delta method
 * with multinomial frequencies, by numerical derivatives.
 *
 * @param frequencies how many kinds had one individual, two, and so on
 * @throws RangeError unless whole and at least 0
 * @example coverageNumber([2, 1])?.value // 6
 */
export function coverageNumber(
  frequencies: readonly number[],
  level = 0.95,
): CoverageNumber | null {
  if (!frequencies.every((each) => Number.isInteger(each) && each >= 0)) {
    throw new RangeError('coverageNumber requires whole numbers of at least 0');
  }
  const rare = frequencies.slice(0, RARE);
  const abundant = frequencies.slice(RARE).reduce((total, each) => total + each, 0);
  const seen = rare.reduce((total, each) => total + each, abundant);
  const { coverage, value } = estimateOf(rare, abundant);
  if (seen > abundant && !(coverage > 0)) return null;
  const all = [...rare, abundant];
  const { gradient } = derivativesOf(
    (at) => estimateOf(at.slice(0, -1), at.at(-1) ?? NaN).value,
    all,
  );
  const along = all.reduce((total, each, i) => total + each * (gradient[i] ?? 0), 0);
  const squares = all.reduce((total, each, i) => total + each * (gradient[i] ?? 0) ** 2, 0);
  const variance = value > 0 ? Math.max(0, squares - along ** 2 / value) : 0;
  return {
    seen,
    coverage,
    value,
    standardError: Math.sqrt(variance),
    interval: unseenInterval(seen, value - seen, variance, level),
  };
}

function estimateOf(
  rare: readonly number[],
  abundant: number,
): { coverage: number; value: number } {
  const kinds = rare.reduce((total, each) => total + each, 0);
  if (kinds === 0) return { coverage: 1, value: abundant };
  const individuals = rare.reduce((total, each, i) => total + each * (i + 1), 0);
  const pairs = rare.reduce((total, each, i) => total + each * (i + 1) * i, 0);
  const [once = 0] = rare;
  const coverage = 1 - once / individuals;
  // Squared coefficient of variation of the kinds' chances.
  const differing = Math.max(
    0,
    ((kinds / coverage) * pairs) / (individuals * (individuals - 1)) - 1,
  );
  return { coverage, value: abundant + kinds / coverage + (once / coverage) * differing };
}
