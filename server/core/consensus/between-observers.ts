import { fQuantile } from '../math/f-distribution.js';
import { cochranQ } from './cochran-q.js';
import type { Unit } from './units.js';

/**
 * How heavy the tails are taken to be: observers now and then overlook part of a group, so their
 * ratios lie further out than the normal law has it. A setting of ours (there is no published
 * value), chosen on simulated counts with seeds 1001 to 1200; `tests/bench/accuracy.ts` measures
 * what it does on seeds 1 to 200. Student's t with few degrees of freedom in place of the normal
 * law: Lange, Little & Taylor 1989 (J. Am. Stat. Assoc. 84:881).
 */
export const TAIL_DEGREES_OF_FREEDOM = 8;

/** A τ² so large says that the counts have nothing to do with each other. */
const MOST = 1e6;

/** Independent counts above zero, on the ln scale: what spread can be learned from. */
export interface LogCounts {
  readonly values: readonly number[];
  /** Of known counting error, with the error of half a bird at the least. */
  readonly variances: readonly number[];
}

/** The counts that `tau2` can be learned from; `null` with under two, or none with known error. */
export function logCountsOf(units: readonly Unit[]): LogCounts | null {
  const positive = units.filter((unit) => unit.total > 0);
  if (positive.length < 2 || positive.every((unit) => unit.logVariance === 0)) return null;
  return {
    values: positive.map((unit) => Math.log(unit.total)),
    variances: positive.map(usableVariance),
  };
}

/**
 * A count without known error would get all the weight. It gets the error of half a bird instead,
 * the finest a count in whole birds can be off.
 */
export function usableVariance(unit: Unit): number {
  return Math.max(unit.logVariance, (0.5 / unit.total) ** 2);
}

/**
 * Variance between observers on the ln scale, learned from all groups of a cell together: two
 * numbers say next to nothing about it, the ten or twenty groups that the same observers counted
 * in the same hour do. It is the τ² at which half of the groups have a generalised Q above its
 * median: a median, so that a few groups with an overlooked flock do not set it for the others.
 *
 * Q/(k − 1) of k counts is held against F with k − 1 and `TAIL_DEGREES_OF_FREEDOM` degrees of
 * freedom. Where fewer than half of the groups differ more than known counting error makes them,
 * and where no group has two counts, it is 0.
 */
export function tau2OfCell(groups: readonly (readonly Unit[])[]): number {
  const counted = groups.flatMap((units) => logCountsOf(units) ?? []);
  const mostlyWider = (tau2: number): boolean => {
    const wider = counted.filter((counts) => spread(counts, tau2) > quantile(counts, 0.5));
    return 2 * wider.length > counted.length;
  };
  return lowestWithout(mostlyWider);
}

/**
 * The τ² that a group's number and interval use: that of its cell, unless its own counts speak
 * against it; then the lower limit of the group's own, the τ² at which so large a Q has a chance
 * of one in four (the Q-profile of Viechtbauer 2007, Stat. Med. 26:37, at 50 %).
 */
export function tau2OfGroup(units: readonly Unit[], ofCell: number): number {
  const counts = logCountsOf(units);
  if (counts === null) return ofCell;
  return Math.max(ofCell, tau2WhereSpreadIs(counts, quantile(counts, 0.75)));
}

/**
 * The τ² at which the generalised Q a degree of freedom is as wanted; 0 where it is lower already.
 * With 1 it is Paule & Mandel's; with the quantiles of chi-squared by their degrees of freedom the
 * limits of the Q-profile interval.
 */
export function tau2WhereSpreadIs(counts: LogCounts, wanted: number): number {
  return lowestWithout((tau2) => spread(counts, tau2) > wanted);
}

/** Generalised Q a degree of freedom. */
function spread({ values, variances }: LogCounts, tau2: number): number {
  return cochranQ(values, variances, tau2) / (values.length - 1);
}

const quantiles = new Map<string, number>();

function quantile({ values }: LogCounts, share: number): number {
  const key = `${values.length} ${share}`;
  const known = quantiles.get(key);
  if (known !== undefined) return known;
  const made = fQuantile(share, values.length - 1, TAIL_DEGREES_OF_FREEDOM);
  quantiles.set(key, made);
  return made;
}

/** The least τ² at which something that ends as τ² grows has ended, by bisection. */
function lowestWithout(holds: (tau2: number) => boolean): number {
  if (!holds(0)) return 0;
  let low = 0;
  let high = 1;
  while (high < MOST && holds(high)) high *= 2;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return high;
}
