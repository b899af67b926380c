import { betaQuantile, incompleteBeta } from '../math/beta.js';
import type { Interval } from '../math/bootstrap.js';
import { invertIncreasing } from '../math/invert-increasing.js';
import { zOfLevel } from '../math/normal.js';

function checkProportion(name: string, successes: number, n: number): void {
  if (!(n > 0) || !(successes >= 0 && successes <= n)) {
    throw new RangeError(`${name} requires 0 to n of n over 0, not ${successes} of ${n}`);
  }
}

/**
 * Wilson's interval for a proportion (1927, J. Am. Stat. Assoc. 22:209): the score interval, close
 * to its level on average and never outside 0 to 1. Things counted are taken as independent.
 *
 * @param successes how many of n
 * @throws RangeError for n of 0 or successes outside 0 to n
 * @example wilsonInterval(0, 20, 0.95).low // 0
 */
export function wilsonInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('wilsonInterval', successes, n);
  const z2 = zOfLevel(level) ** 2;
  const share = successes / n;
  const centre = (share + z2 / (2 * n)) / (1 + z2 / n);
  const reach = Math.sqrt((z2 * (share * (1 - share) + z2 / (4 * n))) / n) / (1 + z2 / n);
  return {
    low: successes === 0 ? 0 : Math.max(0, centre - reach),
    high: successes === n ? 1 : Math.min(1, centre + reach),
  };
}

/**
 * Exact interval of Clopper & Pearson (1934, Biometrika 26:404) for a proportion: holds at least its
 * level always, hence wide. By quantiles of the beta distribution.
 *
 * @param successes how many of n
 * @throws RangeError for n of 0 or successes outside 0 to n
 * @example clopperPearsonInterval(5, 5, 0.95).low // 0.4781762498950185
 */
export function clopperPearsonInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('clopperPearsonInterval', successes, n);
  const tail = (1 - level) / 2;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, n - successes + 1),
    high: successes === n ? 1 : betaQuantile(1 - tail, successes + 1, n - successes),
  };
}

/**
 * Wilson's interval with continuity correction (Newcombe 1998, Stat. Med. 17:857, method 4).
 *
 * @throws RangeError as `wilsonInterval`
 * @example correctedWilsonInterval(0, 20, 0.95).low // 0
 */
export function correctedWilsonInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('correctedWilsonInterval', successes, n);
  const z = zOfLevel(level);
  const share = successes / n;
  const base = 2 * successes + z * z;
  const root = (sign: 1 | -1): number =>
    z * Math.sqrt(z * z - sign * 2 - 1 / n + 4 * share * (n * (1 - share) + sign));
  return {
    low: successes === 0 ? 0 : Math.max(0, (base - 1 - root(1)) / (2 * (n + z * z))),
    high: successes === n ? 1 : Math.min(1, (base + 1 + root(-1)) / (2 * (n + z * z))),
  };
}

/**
 * Jeffreys' equal-tailed interval: quantiles of the beta distribution with half a success and half a
 * failure added, 0 and 1 where all are one kind (Brown, Cai & DasGupta 2001, Stat. Sci. 16:101).
 *
 * @throws RangeError as `wilsonInterval`
 * @example jeffreysInterval(0, 20, 0.95).low // 0
 */
export function jeffreysInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('jeffreysInterval', successes, n);
  const tail = (1 - level) / 2;
  const [yes, no] = [successes + 0.5, n - successes + 0.5];
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, yes, no),
    high: successes === n ? 1 : betaQuantile(1 - tail, yes, no),
  };
}

/**
 * Mid-P interval: as Clopper & Pearson, with half the chance of what was observed left out of each
 * tail (Newcombe 1998, method 6).
 *
 * @throws RangeError as `wilsonInterval`
 * @example midPInterval(0, 20, 0.95).low // 0
 */
export function midPInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('midPInterval', successes, n);
  const tail = (1 - level) / 2;
  // The chance of `least` or more, as a tail of the beta distribution.
  const atLeast = (least: number, share: number): number =>
    least <= 0 ? 1 : least > n ? 0 : incompleteBeta(share, least, n - least + 1, 1 - share);
  const middle = (share: number): number =>
    (atLeast(successes, share) + atLeast(successes + 1, share)) / 2;
  return {
    low: successes === 0 ? 0 : invertIncreasing(middle, tail, 0, 1),
    high: successes === n ? 1 : invertIncreasing(middle, 1 - tail, 0, 1),
  };
}

/**
 * Agresti & Coull's interval (1998, Am. Stat. 52:119): the simple one, with z² things added of which
 * half are successes. Not cut off: it may go below 0 and above 1.
 *
 * @throws RangeError as `wilsonInterval`
 * @example agrestiCoullInterval(5, 10, 0.95).low + agrestiCoullInterval(5, 10, 0.95).high // 1
 */
export function agrestiCoullInterval(successes: number, n: number, level = 0.95): Interval {
  checkProportion('agrestiCoullInterval', successes, n);
  const z = zOfLevel(level);
  const all = n + z * z;
  const share = (successes + (z * z) / 2) / all;
  const reach = z * Math.sqrt((share * (1 - share)) / all);
  return { low: share - reach, high: share + reach };
}
