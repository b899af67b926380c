import { expandedLevel, percentileInterval, type Interval } from '../math/bootstrap.js';
import type { SeededRandom } from '../math/seeded-random.js';

export type Metric = 'nominal' | 'ordinal' | 'interval' | 'ratio';

/** What each observer gave to a unit; `null` = gave nothing. */
export type Unit = readonly (number | null)[];

/**
 * Krippendorff's alpha: agreement of any number of observers on any kind of value, with gaps.
 *
 * Method: 1 − observed / expected disagreement from the coincidences of values within units
 * (Krippendorff 2011, Computing Krippendorff's Alpha-Reliability), with the squared difference of
 * the metric. Units with fewer than two values say nothing and are left out. `null` where all values
 * are the same, or no unit has two. Assumes that observers are interchangeable.
 *
 * @param units what each observer gave to each unit; `null` or left out = gave nothing
 * @param metric nominal: same or not; ordinal: by ranks; interval: differences; ratio: differences
 * over sums, for numbers of at least 0
 * @example krippendorffAlpha([[1, 1], [2, 2], [3, 3]], 'interval') // 1
 */
export function krippendorffAlpha(units: readonly Unit[], metric: Metric): number | null {
  const table = tableOf(units);
  return alphaOf(table, metric, new Float64Array(table.units).fill(1));
}

/**
 * Interval of Krippendorff's alpha by a bootstrap of whole units, at the expanded percentile level
 * (see `expandedLevel`). `null` where under nine in ten draws have an alpha, or there is one unit.
 *
 * @param random seeded, so that the interval is the same every time
 */
export function krippendorffAlphaInterval(
  units: readonly Unit[],
  metric: Metric,
  random: SeededRandom,
  level = 0.95,
  resamples = 999,
): Interval | null {
  const table = tableOf(units);
  if (table.units < 2) return null;
  const replicates: number[] = [];
  const timesDrawn = new Float64Array(table.units);
  for (let resample = 0; resample < resamples; resample += 1) {
    timesDrawn.fill(0);
    for (let draw = 0; draw < table.units; draw += 1) {
      const drawn = random.integer(table.units);
      timesDrawn[drawn] = (timesDrawn[drawn] ?? 0) + 1;
    }
    const alpha = alphaOf(table, metric, timesDrawn);
    if (alpha !== null) replicates.push(alpha);
  }
  if (replicates.length < 0.9 * resamples) return null;
  return percentileInterval(
    Float64Array.from(replicates).sort(),
    expandedLevel(level, table.units),
  );
}

/** Units with two values or more, in flat arrays: unit u has `places` from `starts[u]` on. */
interface Table {
  readonly units: number;
  readonly starts: Int32Array;
  /** Places in `values` of what was given. */
  readonly places: Int32Array;
  /** All values that occur, smallest first. */
  readonly values: Float64Array;
}

function tableOf(units: readonly Unit[]): Table {
  const starts = [0];
  const given: number[] = [];
  for (const unit of units) {
    const before = given.length;
    for (const value of unit) if (value !== null) given.push(value);
    if (given.length - before >= 2) starts.push(given.length);
    else given.length = before;
  }
  const values = Float64Array.from(new Set(given)).sort();
  const placeOf = new Map<number, number>();
  values.forEach((value, place) => placeOf.set(value, place));
  return {
    units: starts.length - 1,
    starts: Int32Array.from(starts),
    places: Int32Array.from(given, (value) => placeOf.get(value) ?? 0),
    values,
  };
}

function alphaOf(
  { units, starts, places, values }: Table,
  metric: Metric,
  timesDrawn: Float64Array,
): number | null {
  const frequency = new Float64Array(values.length);
  let total = 0;
  for (let unit = 0; unit < units; unit += 1) {
    const times = timesDrawn[unit] ?? 0;
    if (times === 0) continue;
    const end = starts[unit + 1] ?? 0;
    for (let i = starts[unit] ?? 0; i < end; i += 1) {
      const place = places[i] ?? 0;
      frequency[place] = (frequency[place] ?? 0) + times;
      total += times;
    }
  }
  const scale = metric === 'ordinal' ? middleRanks(frequency) : values;
  const difference2 = squaredDifference(metric, scale);
  let observed = 0;
  for (let unit = 0; unit < units; unit += 1) {
    const times = timesDrawn[unit] ?? 0;
    if (times === 0) continue;
    const [start, end] = [starts[unit] ?? 0, starts[unit + 1] ?? 0];
    let within = 0;
    for (let i = start; i < end; i += 1) {
      for (let j = i + 1; j < end; j += 1) {
        within += difference2(places[i] ?? 0, places[j] ?? 0);
      }
    }
    observed += (times * 2 * within) / (end - start - 1);
  }
  const expected = expectedDisagreement(metric, scale, frequency, total);
  return expected === 0 ? null : 1 - ((total - 1) * observed) / expected;
}

/** Of two places among the values, on the scale of the metric. */
function squaredDifference(
  metric: Metric,
  scale: Float64Array,
): (one: number, other: number) => number {
  switch (metric) {
    case 'nominal':
      return (one, other) => (one === other ? 0 : 1);
    case 'interval':
    case 'ordinal':
      return (one, other) => ((scale[one] ?? NaN) - (scale[other] ?? NaN)) ** 2;
    case 'ratio':
      return (one, other) => {
        if (one === other) return 0;
        const [a, b] = [scale[one] ?? NaN, scale[other] ?? NaN];
        return ((a - b) / (a + b)) ** 2;
      };
  }
}

/** Sum over all pairs of given values, each way round. In one pass, but for ratios. */
function expectedDisagreement(
  metric: Metric,
  scale: Float64Array,
  frequency: Float64Array,
  total: number,
): number {
  if (metric === 'nominal') {
    return total * total - frequency.reduce((sum, count) => sum + count * count, 0);
  }
  if (metric === 'ratio') return ratioDisagreement(scale, frequency);
  // Σ Σ f f' (v − v')² = 2 n Σ f (v − mean)².
  let [weighed, kinds] = [0, 0];
  frequency.forEach((count, place) => {
    weighed += count * (scale[place] ?? NaN);
    kinds += count > 0 ? 1 : 0;
  });
  if (kinds < 2) return 0;
  const centre = weighed / total;
  let squares = 0;
  frequency.forEach((count, place) => {
    squares += count * ((scale[place] ?? NaN) - centre) ** 2;
  });
  return 2 * total * squares;
}

function ratioDisagreement(scale: Float64Array, frequency: Float64Array): number {
  let expected = 0;
  for (let i = 0; i < scale.length; i += 1) {
    const [count, value] = [frequency[i] ?? 0, scale[i] ?? NaN];
    if (count === 0) continue;
    let row = 0;
    for (let j = i + 1; j < scale.length; j += 1) {
      const other = scale[j] ?? NaN;
      row += (frequency[j] ?? 0) * ((value - other) / (value + other)) ** 2;
    }
    expected += 2 * count * row;
  }
  return expected;
}

/** Middle rank of each value among all that were given. */
function middleRanks(frequency: Float64Array): Float64Array {
  let below = 0;
  return frequency.map((count) => {
    const rank = below + count / 2;
    below += count;
    return rank;
  });
}
