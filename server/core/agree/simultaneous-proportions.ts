import type { Interval } from '../math/bootstrap.js';
import { devianceTerm, stirlingError } from '../math/gamma.js';
import { sum } from '../math/sum.js';
import { wilsonInterval } from './proportion-interval.js';

/**
 * Intervals for all shares of a multinomial sample at once (Goodman 1965, Technometrics 7:247): each
 * is Wilson's at a level of 1 − (1 − level) / categories, so that together they hold theirs (Bonferroni).
 *
 * Of two categories each has Wilson's interval at 97.5 %. Purpose: the shares of several species in a scanned raft, read as one statement.
 *
 * @param counts whole, at least 0, one a category; two or more categories, not all 0
 * @throws RangeError for other counts
 * @example goodmanIntervals([5, 5])[0]?.low // 0.2108662706342408
 */
export function goodmanIntervals(counts: readonly number[], level = 0.95): Interval[] {
  const n = checkedTotal('goodmanIntervals', counts);
  const each = 1 - (1 - level) / counts.length;
  return counts.map((count) => wilsonInterval(count, n, each));
}

/**
 * The same by Sison & Glaz (1995, J. Am. Stat. Assoc. 90:366): the least c with which all counts lie
 * within c of what is expected with the wanted chance, if the observed shares were the true ones; then
 * share − c/n to share + (c + 2γ)/n, γ from 0 to 1 by where the chance lies between that of c and c + 1.
 *
 * The chance is that of independent Poisson counts, each held within its limits, given that they add up
 * to n, by their Edgeworth expansion (Levin 1981, Ann. Stat. 9:1123). Narrower than Goodman's for many
 * categories of like size (May & Johnson 2000, J. Stat. Softw. 5(6), who advise it for seven or more); for two the
 * expansion is rough, and the interval a twentieth too wide.
 *
 * @throws RangeError as `goodmanIntervals`
 */
export function sisonGlazIntervals(counts: readonly number[], level = 0.95): Interval[] {
  const n = checkedTotal('sisonGlazIntervals', counts);
  const held = counts.map((count) => new HeldPoisson(count));
  let [below, reached] = [0, 0];
  while (reached < level && (held[0]?.reach ?? n) < n) {
    held.forEach((each) => {
      each.widen();
    });
    [below, reached] = [reached, chanceOfTotal(held, n)];
  }
  const c = (held[0]?.reach ?? 1) - 1;
  const between = reached > below ? Math.min(1, (level - below) / (reached - below)) : 1;
  return counts.map((count) => ({
    low: Math.max(0, (count - c) / n),
    high: Math.min(1, (count + c + 2 * between) / n),
  }));
}

/** Chance that multinomial counts of n lie within the limits at which Poisson counts are held. */
function chanceOfTotal(held: readonly HeldPoisson[], n: number): number {
  const moments = held.map((each) => each.moments());
  const variance = sum(moments.map((each) => each.variance));
  const deviation = Math.sqrt(variance);
  const skew = sum(moments.map((each) => each.third)) / deviation ** 3;
  const excess = sum(moments.map((each) => each.fourth - 3 * each.variance ** 2)) / variance ** 2;
  const z = -sum(moments.map((each) => each.off)) / deviation;
  const edgeworth =
    (1 / Math.sqrt(2 * Math.PI)) *
    Math.exp((-z * z) / 2) *
    (1 +
      (skew / 6) * (z ** 3 - 3 * z) +
      (excess / 24) * (z ** 4 - 6 * z ** 2 + 3) +
      (skew ** 2 / 72) * (z ** 6 - 15 * z ** 4 + 45 * z ** 2 - 15));
  const allHeld = moments.reduce((chance, each) => chance * each.chance, 1);
  return (allHeld * edgeworth) / deviation / poissonChance(n, n);
}

/** A Poisson count held within `reach` of its whole mean; its limits move out step by step. */
class HeldPoisson {
  reach = 0;
  /** Σ chance × (x − mean)ʳ over the numbers within the limits, r from 0 to 4. */
  private readonly sums: number[];

  constructor(private readonly mean: number) {
    this.sums = [poissonChance(mean, mean), 0, 0, 0, 0];
  }

  widen(): void {
    this.reach += 1;
    for (const away of [-this.reach, this.reach]) {
      if (this.mean + away < 0) continue;
      const chance = poissonChance(this.mean + away, this.mean);
      for (let r = 0; r <= 4; r += 1) this.sums[r] = (this.sums[r] ?? 0) + chance * away ** r;
    }
  }

  /** Chance of lying within; and of those that do, how far their mean is off, and central moments. */
  moments(): { chance: number; off: number; variance: number; third: number; fourth: number } {
    const [chance = NaN, ...others] = this.sums;
    const [off = NaN, m2 = NaN, m3 = NaN, m4 = NaN] = others.map((each) => each / chance);
    return {
      chance,
      off,
      variance: m2 - off ** 2,
      third: m3 - 3 * off * m2 + 2 * off ** 3,
      fourth: m4 - 4 * off * m3 + 6 * off ** 2 * m2 - 3 * off ** 4,
    };
  }
}

/** Chance of x where the mean is m, both 0 or more (Loader's form). */
function poissonChance(x: number, m: number): number {
  if (x === 0) return Math.exp(-m);
  return Math.exp(-stirlingError(x) - devianceTerm(x, m)) / Math.sqrt(2 * Math.PI * x);
}

function checkedTotal(name: string, counts: readonly number[]): number {
  const n = counts.reduce((total, count) => total + count, 0);
  if (
    counts.length < 2 ||
    !(n > 0) ||
    !counts.every((count) => Number.isInteger(count) && count >= 0)
  ) {
    throw new RangeError(`${name} requires whole counts of two or more categories, not all 0`);
  }
  return n;
}
