import { mean, sampleVariance, sum } from './sum.js';
import { normalCdf, normalQuantile } from './normal.js';
import { quantileOfSorted } from './quantile.js';
import { seededRandom, type SeededRandom } from './seeded-random.js';
import { studentTQuantile } from './student-t.js';

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Bootstrap replicates of a statistic (Efron 1979, Ann. Stat. 7:1): units are drawn with
 * replacement, as many as there are, and the statistic taken of each draw.
 *
 * @param units what is drawn as a whole; draw clusters, not birds, where birds go together
 * @param statistic `null` where a draw does not define it; such draws are left out
 * @param resamples how many draws
 * @returns the defined replicates, sorted
 * @throws RangeError without units
 */
export function bootstrapReplicates<Unit>(
  units: readonly Unit[],
  statistic: (drawn: readonly Unit[]) => number | null,
  resamples: number,
  random: SeededRandom,
): Float64Array {
  if (units.length === 0) throw new RangeError('bootstrapReplicates requires at least one unit');
  const replicates: number[] = [];
  const drawn = [...units];
  for (let resample = 0; resample < resamples; resample += 1) {
    for (let place = 0; place < drawn.length; place += 1) {
      drawn[place] = units[random.integer(units.length)] as Unit;
    }
    const value = statistic(drawn);
    if (value !== null) replicates.push(value);
  }
  return Float64Array.from(replicates).sort();
}

/**
 * Percentile interval: the middle share `level` of the replicates (Efron & Tibshirani 1993, ch 13).
 *
 * @param replicates sorted, at least one
 * @example percentileInterval(Float64Array.of(0, 1, 2, 3, 4), 0.5) // { low: 1, high: 3 }
 */
export function percentileInterval(replicates: Float64Array, level: number): Interval {
  return {
    low: quantileOfSorted(replicates, (1 - level) / 2),
    high: quantileOfSorted(replicates, (1 + level) / 2),
  };
}

/**
 * The level to ask of a percentile interval so that it holds `level` with few units (the expanded
 * percentile interval of Hesterberg 2015, Am. Stat. 69:371).
 *
 * A plain percentile interval of n units is too narrow by √((n − 1)/n) and by z in place of t;
 * both are made good by widening the level. With 5 units, 0.95 becomes 0.998.
 *
 * @param units at least 2
 * @throws RangeError below
 * @example expandedLevel(0.95, 5) // 0.998091798896
 */
export function expandedLevel(level: number, units: number): number {
  if (units < 2) throw new RangeError(`expandedLevel requires at least two units, not ${units}`);
  const t = studentTQuantile((1 + level) / 2, units - 1);
  return 1 - 2 * normalCdf(-t * Math.sqrt(units / (units - 1)));
}

/**
 * Bias-corrected and accelerated interval (BCa; Efron 1987, J. Am. Stat. Assoc. 82:171), with the
 * acceleration from the jackknife values.
 *
 * Where the estimate lies outside all replicates the correction is infinite: `null`.
 *
 * @param replicates sorted, at least one
 * @param estimate the statistic of the data
 * @param jackknife the statistic without each unit in turn
 */
export function bcaInterval(
  replicates: Float64Array,
  estimate: number,
  jackknife: readonly number[],
  level: number,
): Interval | null {
  let below = 0;
  for (const replicate of replicates) {
    below += replicate < estimate ? 1 : replicate === estimate ? 0.5 : 0;
  }
  const bias = normalQuantile(below / replicates.length);
  if (!Number.isFinite(bias)) return null;
  const acceleration = jackknifeAcceleration(jackknife);
  const adjusted = (p: number): number => {
    const z = bias + normalQuantile(p);
    return normalCdf(bias + z / (1 - acceleration * z));
  };
  return {
    low: quantileOfSorted(replicates, adjusted((1 - level) / 2)),
    high: quantileOfSorted(replicates, adjusted((1 + level) / 2)),
  };
}

/**
 * Acceleration from jackknife values (Efron & Tibshirani 1993, eq 14.15): how the standard error
 * changes with the statistic. 0 where leaving out any unit changes nothing.
 *
 * @throws RangeError for an empty list
 */
export function jackknifeAcceleration(jackknife: readonly number[]): number {
  const centre = mean(jackknife);
  const deviations = jackknife.map((value) => centre - value);
  const squares = sum(deviations.map((deviation) => deviation ** 2));
  if (squares === 0) return 0;
  return sum(deviations.map((deviation) => deviation ** 3)) / (6 * squares ** 1.5);
}

export interface BootstrapEstimate {
  /** The statistic of the data; `null` where they do not define it. */
  readonly value: number | null;
  readonly standardError: number | null;
  readonly bias: number | null;
  readonly percentile: Interval | null;
  readonly bca: Interval | null;
  /** Draws that define the statistic; under nine in ten there are no intervals. */
  readonly replicates: number;
  readonly jackknife: { readonly standardError: number; readonly bias: number } | null;
  readonly n: number;
}

/** Fewer units say nothing of their own spread. */
const FEWEST_UNITS = 2;
const LEAST_DEFINED = 0.9;

/**
 * A statistic with its bootstrap standard error, bias, percentile and BCa intervals, and those of the
 * jackknife (Efron & Tibshirani 1993, An Introduction to the Bootstrap, chapters 6, 10, 11, 13, 14).
 *
 * Assumes units independent and drawn from one population. BCa needs the statistic without each unit
 * in turn; where one of these is not defined there is no BCa and no jackknife.
 *
 * @param seed explicit, so that the answer is the same every time
 * @example bootstrapEstimate([1, 1, 1], (drawn) => drawn.length, { seed: 1 }).standardError // 0
 */
export function bootstrapEstimate<Unit>(
  units: readonly Unit[],
  statistic: (drawn: readonly Unit[]) => number | null,
  options: { readonly seed: number; readonly resamples?: number; readonly level?: number },
): BootstrapEstimate {
  const { seed, resamples = 1999, level = 0.95 } = options;
  const n = units.length;
  const value = n === 0 ? null : statistic(units);
  const nothing = { standardError: null, bias: null, percentile: null, bca: null, jackknife: null };
  if (value === null || n < FEWEST_UNITS) return { value, ...nothing, replicates: 0, n };
  const replicates = bootstrapReplicates(units, statistic, resamples, seededRandom(seed));
  const without = units.map((_, left) => statistic(units.filter((__, unit) => unit !== left)));
  const jackknifed = without.every((each) => each !== null) ? without : null;
  const defined = replicates.length >= LEAST_DEFINED * resamples;
  return {
    value,
    standardError: defined ? Math.sqrt(sampleVariance(replicates)) : null,
    bias: defined ? mean(replicates) - value : null,
    percentile: defined ? percentileInterval(replicates, level) : null,
    bca: defined && jackknifed ? bcaInterval(replicates, value, jackknifed, level) : null,
    replicates: replicates.length,
    jackknife: jackknifed === null ? null : jackknifeOf(jackknifed, value),
    n,
  };
}

function jackknifeOf(
  without: readonly number[],
  value: number,
): { standardError: number; bias: number } {
  const n = without.length;
  return {
    standardError: Math.sqrt(((n - 1) ** 2 / n) * sampleVariance(without)),
    bias: (n - 1) * (mean(without) - value),
  };
}
