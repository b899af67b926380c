import { expandedLevel, percentileInterval, type Interval } from '../math/bootstrap.js';
import { seededRandom } from '../math/seeded-random.js';

/** Fixed, so that the same count always has the same bytes; the number itself means nothing. */
const BOOTSTRAP_SEED = 20270116;
/** One less than a multiple of 1,000 puts percentiles on replicates (Davison & Hinkley 1997, 2.2). */
const BOOTSTRAP_RESAMPLES = 999;
/** Below this share of draws that define the statistic, an interval would be about other data. */
const FEWEST_DEFINED = 0.9;

/** What one cluster adds to each sum that a statistic is made of: sum's place → amount. */
export type ClusterSums = ReadonlyMap<number, number>;

/** A statistic of sums over clusters, in an array that is used again; `null` where not defined. */
export type OfSums = (sums: Float64Array) => number | null;

/**
 * Intervals of statistics of sums over clusters, by the cluster bootstrap (Davison & Hinkley 1997,
 * Bootstrap Methods, 3.8): clusters are drawn whole, with replacement.
 *
 * Purpose: birds of one flock are seen, missed and misnamed together, so that an interval which
 * takes birds as independent would be far too narrow. Percentiles are taken at the expanded level
 * (Hesterberg 2015), as there are few clusters. In made-up counts of 5 to 80 flocks of very unequal
 * size, 95 % intervals of a share held the truth in 89 to 92 % (a test repeats it for 12).
 *
 * @param clusters at least two, in an order that does not depend on names of observers
 * @param size how many sums there are
 * @param statistics all taken of the same draws
 * @param level of the intervals, such as 0.95
 * @returns an interval for each statistic; `null` where under nine in ten draws define it
 * @throws RangeError for fewer than two clusters
 */
export function clusterBootstrapIntervals(
  clusters: readonly ClusterSums[],
  size: number,
  statistics: readonly OfSums[],
  level: number,
): (Interval | null)[] {
  const random = seededRandom(BOOTSTRAP_SEED);
  const { starts, owners, amounts } = bySum(clusters, size);
  const timesDrawn = new Float64Array(clusters.length);
  const sums = new Float64Array(size);
  const replicates = statistics.map((): number[] => []);
  for (let resample = 0; resample < BOOTSTRAP_RESAMPLES; resample += 1) {
    timesDrawn.fill(0);
    for (let draw = 0; draw < clusters.length; draw += 1) {
      const drawn = random.integer(clusters.length);
      timesDrawn[drawn] = (timesDrawn[drawn] ?? 0) + 1;
    }
    for (let place = 0; place < size; place += 1) {
      const end = starts[place + 1] ?? 0;
      let total = 0;
      for (let i = starts[place] ?? 0; i < end; i += 1) {
        total += (timesDrawn[owners[i] ?? 0] ?? 0) * (amounts[i] ?? 0);
      }
      sums[place] = total;
    }
    statistics.forEach((statistic, index) => {
      const value = statistic(sums);
      if (value !== null) replicates[index]?.push(value);
    });
  }
  const expanded = expandedLevel(level, clusters.length);
  return replicates.map((values) =>
    values.length < FEWEST_DEFINED * BOOTSTRAP_RESAMPLES
      ? null
      : percentileInterval(Float64Array.from(values).sort(), expanded),
  );
}

/**
 * The same amounts sum by sum instead of cluster by cluster, in flat arrays: the inner loop runs
 * some million times. Entries of sum p are those from `starts[p]` up to `starts[p + 1]`.
 */
function bySum(
  clusters: readonly ClusterSums[],
  size: number,
): { starts: Int32Array; owners: Int32Array; amounts: Float64Array } {
  const starts = new Int32Array(size + 1);
  const owners: number[] = [];
  const amounts: number[] = [];
  for (let place = 0; place < size; place += 1) {
    clusters.forEach((cluster, owner) => {
      const amount = cluster.get(place) ?? 0;
      if (amount === 0) return;
      owners.push(owner);
      amounts.push(amount);
    });
    starts[place + 1] = owners.length;
  }
  return { starts, owners: Int32Array.from(owners), amounts: Float64Array.from(amounts) };
}
