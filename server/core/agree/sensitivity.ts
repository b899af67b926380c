import type { Sensitivity, Statistic } from '../model/agreement.js';
import { clusterBootstrapIntervals, type OfSums } from './cluster-bootstrap.js';
import { sumByCluster } from './cluster-sums.js';
import type { ComparedUnit } from './compared-units.js';
import { clopperPearsonInterval } from './proportion-interval.js';
import { noStatistic, statisticOf } from './statistic.js';

const LEVEL = 0.95;
const [BY_A, BY_B, BY_BOTH] = [0, 1, 2];

/**
 * Of the birds that one observer gave a taxon and both saw, the share that the other gave it too: how
 * well each finds what the other finds. Neither is the truth; no gold standard enters.
 *
 * @param units of one pair of observers, taxon by taxon (`comparedTaxa`)
 * @returns taxa that one of them gave birds that both saw, by name
 */
export function sensitivitiesOf(
  units: ReadonlyMap<string, readonly ComparedUnit[]>,
  minimumUnits: number,
): Sensitivity[] {
  return [...units.keys()].sort().flatMap((taxon) => {
    const { clusters, sums } = sumsOf(taxon, units.get(taxon) ?? []);
    const [byA = 0, byB = 0, byBoth = 0] = [sums[BY_A], sums[BY_B], sums[BY_BOTH]].map(rounded);
    if (byA + byB === 0) return [];
    const share = (of: number): Statistic => shareOf(clusters, sums, of, minimumUnits);
    return [{ taxon, byA, byB, byBoth, ofA: share(BY_B), ofB: share(BY_A) }];
  });
}

/**
 * The same over all pairs of observers and both ways round: of birds that one of two gave the taxon,
 * the share that the other gave it too.
 */
export function sensitivityOf(
  taxon: string,
  units: readonly ComparedUnit[],
  minimumUnits: number,
): Statistic {
  const bothWays = units.flatMap((unit) => [
    unit,
    { ...unit, named: unit.named.map(({ a, b, number }) => ({ a: b, b: a, number })) },
  ]);
  const { clusters, sums } = sumsOf(taxon, bothWays);
  return shareOf(clusters, sums, BY_A, minimumUnits);
}

function sumsOf(taxon: string, units: readonly ComparedUnit[]): ReturnType<typeof sumByCluster> {
  const both = units.filter(({ named }) => named.some(({ a, b }) => a === taxon || b === taxon));
  return sumByCluster(both, ({ named }) =>
    named.flatMap(({ a, b, number }): [number, number][] => [
      [BY_A, a === taxon ? number : 0],
      [BY_B, b === taxon ? number : 0],
      [BY_BOTH, a === taxon && b === taxon ? number : 0],
    ]),
  );
}

function shareOf(
  clusters: ReturnType<typeof sumByCluster>['clusters'],
  sums: Float64Array,
  of: number,
  minimumUnits: number,
): Statistic {
  const withAny = clusters.filter((cluster) => (cluster.get(of) ?? 0) > 0);
  const n = withAny.length;
  if (n < Math.max(2, minimumUnits)) return noStatistic(n);
  const share: OfSums = (totals) =>
    (totals[of] ?? 0) > 0 ? (totals[BY_BOTH] ?? 0) / (totals[of] ?? 0) : null;
  const value = share(sums);
  if (value === 0 || value === 1) {
    return statisticOf(value, clopperPearsonInterval(value * n, n, LEVEL), n);
  }
  const [interval] = clusterBootstrapIntervals(withAny, sums.length, [share], LEVEL);
  return statisticOf(value, interval ?? null, n);
}

function rounded(value: number | undefined): number {
  return Math.round((value ?? 0) * 1e6) / 1e6;
}
