import { normalCdf } from '../math/normal.js';

/**
 * Spread of flock sizes where a count shows few: standard deviation of ln number, worth so many
 * flocks (common practice, no source: flocks of one kind range over about a factor of ten).
 */
const USUAL_LOG_SPREAD = 1.2;
const WORTH_FLOCKS = 4;

/** How ln flock size is spread among flocks of a count. */
export interface SizeSpread {
  readonly mean: number;
  readonly variance: number;
}

/** A number with its error, on the ln scale. */
export interface LogNumber {
  readonly mean: number;
  readonly variance: number;
}

/** What may have happened to a flock between two sightings. */
export interface SizeChange {
  /** How often birds leave or join, and how much then: standard deviation of the change of ln number. */
  readonly chance: number;
  readonly spread: number;
  /** How often the one is only a part of the other: any share of it, all as likely. */
  readonly part: number;
}

/** A log-likelihood ratio of two numbers, and whether the one is more likely a part of the other. */
export interface SizeRatio {
  readonly weight: number;
  readonly isPart: boolean;
}

/** The spread of ln flock size for every two kinds of a count, looked up fast. */
export class SizeSpreads {
  readonly #overall: number;
  readonly #sums: readonly { flocks: number; sum: number; squares: number }[];

  /**
   * @param logNumbers ln numbers of the count's flocks; `null` for what is no single flock
   * @param kindOf the kind of each
   * @param fitting for every kind, the kinds that may be the same
   */
  constructor(
    logNumbers: readonly (number | null)[],
    kindOf: readonly number[],
    fitting: readonly (readonly number[])[],
  ) {
    const sorted = logNumbers.filter((value) => value !== null).toSorted((a, b) => a - b);
    this.#overall = sorted.reduce((sum, value) => sum + value, 0) / Math.max(1, sorted.length);
    const own = fitting.map(() => ({ flocks: 0, sum: 0, squares: 0 }));
    logNumbers.forEach((value, index) => {
      const sums = own[kindOf[index] ?? 0];
      if (sums === undefined || value === null) return;
      sums.flocks += 1;
      sums.sum += value;
      sums.squares += value ** 2;
    });
    this.#sums = fitting.map((kinds) =>
      kinds.reduce(
        (total, kind) => ({
          flocks: total.flocks + (own[kind]?.flocks ?? 0),
          sum: total.sum + (own[kind]?.sum ?? 0),
          squares: total.squares + (own[kind]?.squares ?? 0),
        }),
        { flocks: 0, sum: 0, squares: 0 },
      ),
    );
  }

  /** Of flocks like one of two kinds, drawn towards the whole count's mean while they are few. */
  of(one: number, other: number): SizeSpread {
    const [a, b] = [this.#sums[one], this.#sums[other]];
    const flocks = ((a?.flocks ?? 0) + (b?.flocks ?? 0)) / 2;
    const sum = ((a?.sum ?? 0) + (b?.sum ?? 0)) / 2;
    const squares = ((a?.squares ?? 0) + (b?.squares ?? 0)) / 2;
    return spreadFrom(flocks, sum, squares, this.#overall);
  }
}

/**
 * The spread of ln flock size: that of the flocks given, drawn towards the whole count's mean and
 * the usual spread while they are few.
 *
 * @param logNumbers ln numbers of flocks of a kind
 * @param overall mean ln number of all the count's flocks
 */
export function sizeSpreadOf(logNumbers: readonly number[], overall: number): SizeSpread {
  const sorted = logNumbers.toSorted((a, b) => a - b);
  const sum = sorted.reduce((total, value) => total + value, 0);
  const squares = sorted.reduce((total, value) => total + value ** 2, 0);
  return spreadFrom(sorted.length, sum, squares, overall);
}

function spreadFrom(flocks: number, sum: number, squares: number, overall: number): SizeSpread {
  const weight = WORTH_FLOCKS + flocks;
  const mean = (WORTH_FLOCKS * overall + sum) / weight;
  const about = Math.max(0, squares - 2 * mean * sum + flocks * mean ** 2);
  return { mean, variance: (WORTH_FLOCKS * USUAL_LOG_SPREAD ** 2 + about) / weight };
}

/**
 * Log-likelihood ratio of two flock numbers: one flock counted twice against two flocks drawn from
 * the spread of sizes. Under one flock, its true ln size is normal about the spread's mean and both
 * counts err about it, and by birds lost or joined between them, if any were; or the smaller is any
 * share of the larger (a mixture of three). So an unusual size that returns weighs more than a common
 * one, and a much smaller flock may be a part that left.
 */
export function sizeRatio(
  first: LogNumber,
  second: LogNumber,
  spread: SizeSpread,
  change: SizeChange,
): SizeRatio {
  const kept = bivariateLogRatio(first, second, spread, 0);
  const changed = bivariateLogRatio(first, second, spread, change.spread ** 2);
  const whole = logSum(
    Math.log(1 - change.chance - change.part) + kept,
    Math.log(change.chance) + changed,
  );
  if (change.part === 0) return { weight: whole, isPart: false };
  const part = Math.log(change.part) + partLogRatio(first, second, spread);
  return { weight: logSum(whole, part), isPart: part > whole };
}

/**
 * The same where one number is the undivided total of a section and stands for several flocks: either it
 * is one flock all the same, as likely as it holds few; or the other is any one of its flocks, and then
 * its size only has to fit in. The weight holds that any of them may be the one.
 *
 * @param holds how many flocks the total stands for, at least 1
 */
export function totalRatio(
  total: LogNumber,
  flock: LogNumber,
  holds: number,
  spread: SizeSpread,
  change: SizeChange,
): SizeRatio {
  const whole = sizeRatio(total, flock, spread, { ...change, part: 0 }).weight - Math.log(holds);
  if (holds === 1) return { weight: whole, isPart: false };
  // One of so many flocks is smaller than all together, give or take what both counts err.
  const error = Math.sqrt(total.variance + flock.variance);
  const fits = normalCdf((total.mean - flock.mean) / error);
  const part = Math.log((holds - 1) * fits + Number.MIN_VALUE);
  return { weight: logSum(whole, part), isPart: part > whole };
}

/** Two undivided totals: alike only if both are one flock. */
export function totalsRatio(
  one: LogNumber,
  other: LogNumber,
  holds: readonly [number, number],
  spread: SizeSpread,
  change: SizeChange,
): SizeRatio {
  const { weight } = sizeRatio(one, other, spread, { ...change, part: 0 });
  return { weight: weight - Math.log(holds[0]) - Math.log(holds[1]), isPart: false };
}

/** The smaller is any share of the larger, against a flock of its own. */
function partLogRatio(first: LogNumber, second: LogNumber, spread: SizeSpread): number {
  const [small, large] = first.mean < second.mean ? [first, second] : [second, first];
  const variance = spread.variance + small.variance;
  const apart =
    (-1 / 2) * (Math.log(2 * Math.PI * variance) + (small.mean - spread.mean) ** 2 / variance);
  // A share that is even between 0 and 1 has the density of the share itself on the ln scale.
  return small.mean - large.mean - apart;
}

/** ln density of both numbers if they share a true size, less the ln density if they do not. */
function bivariateLogRatio(
  first: LogNumber,
  second: LogNumber,
  spread: SizeSpread,
  changeVariance: number,
): number {
  const x = first.mean - spread.mean;
  const y = second.mean - spread.mean;
  const shared = spread.variance;
  const varianceX = shared + first.variance;
  const varianceY = shared + second.variance;
  // Two different flocks owe nothing to each other, so no birds are lost or joined between them.
  const apart =
    -(Math.log(varianceX) + Math.log(varianceY) + x ** 2 / varianceX + y ** 2 / varianceY) / 2;
  // Half of the change on either side, so that the answer does not depend on which came first.
  const sameX = varianceX + changeVariance / 2;
  const sameY = varianceY + changeVariance / 2;
  const determinant = sameX * sameY - shared ** 2;
  const distance = (sameY * x ** 2 - 2 * shared * x * y + sameX * y ** 2) / determinant;
  return -(Math.log(determinant) + distance) / 2 - apart;
}

function logSum(a: number, b: number): number {
  const greater = Math.max(a, b);
  return greater + Math.log1p(Math.exp(Math.min(a, b) - greater));
}
