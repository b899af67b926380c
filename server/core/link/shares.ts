import { overlaps } from '../taxa/candidate-set.js';
import type { Flock, Part } from './flock.js';

/**
 * Shares of a kind in two different mixed flocks differ by this (standard deviation of ln share about
 * what is usual for the kind); in two records of one flock, once in five, by as much since some birds
 * were named otherwise (common practice, no source).
 */
const SHARE_SPREAD = 0.8;
const NAMED_OTHERWISE = 0.2;

/**
 * Log-likelihood ratio of the shares of the kinds that both records of a mixed flock name: one flock
 * against two of the same kinds. One share follows from the others, so it is taken for one kind less.
 */
export function sharesLogRatio(a: Flock, b: Flock): number {
  const ratios = partners(a.parts, b.parts).flatMap(([one, other]) => {
    if (one.number === 0 || other.number === 0) return [];
    const apart = Math.log(one.number / a.number) - Math.log(other.number / b.number);
    const error = shareError(a) + shareError(b);
    const different = density(apart, error + 2 * SHARE_SPREAD ** 2);
    const same = (1 - NAMED_OTHERWISE) * density(apart, error) + NAMED_OTHERWISE * different;
    return [Math.log(same / different)];
  });
  if (ratios.length < 2) return 0;
  const sum = ratios.reduce((total, ratio) => total + ratio, 0);
  return (sum * (ratios.length - 1)) / ratios.length;
}

/**
 * Variance of the ln share of a kind. As if all kinds of the flock were counted alike: the error of a sum is
 * that of a part by their number.
 */
export function shareError({ parts, logVariance }: Flock): number {
  return parts.length * logVariance;
}

/** What {@link sharesLogRatio} of so many kinds comes to at most: all shares equal. */
export function mostFromShares(kinds: number, error: number): number {
  const different = density(0, error + 2 * SHARE_SPREAD ** 2);
  const same = (1 - NAMED_OTHERWISE) * density(0, error) + NAMED_OTHERWISE * different;
  return (kinds - 1) * Math.log(same / different);
}

/** The kinds of one flock with those of the other: of the same name, then of names that overlap. */
function partners(a: readonly Part[], b: readonly Part[]): [Part, Part][] {
  const found: [Part, Part][] = [];
  const open = new Set(b);
  for (const fits of [
    (one: Part, other: Part) => one.key === other.key,
    (one: Part, other: Part) => overlaps(one.candidates, other.candidates),
  ]) {
    for (const one of a) {
      if (found.some(([taken]) => taken === one)) continue;
      const nearest = [...open]
        .filter((other) => fits(one, other))
        .toSorted((x, y) => Math.abs(x.number - one.number) - Math.abs(y.number - one.number))[0];
      if (nearest === undefined) continue;
      open.delete(nearest);
      found.push([one, nearest]);
    }
  }
  return found;
}

/** Normal density about 0, but for a factor that all densities share. */
function density(value: number, variance: number): number {
  return Math.exp(-(value ** 2) / (2 * variance)) / Math.sqrt(variance);
}
