import type { ClusterSums } from './cluster-bootstrap.js';
import type { ComparedUnit } from './compared-units.js';

/** Adds up what units give to each sum, by cluster (sorted) and over all. */
export function sumByCluster(
  units: readonly ComparedUnit[],
  amounts: (unit: ComparedUnit) => readonly (readonly [number, number])[],
): { clusters: ClusterSums[]; sums: Float64Array } {
  const byCluster = new Map<string, Map<number, number>>();
  let size = 0;
  for (const unit of units) {
    const cluster = byCluster.get(unit.cluster) ?? new Map<number, number>();
    byCluster.set(unit.cluster, cluster);
    for (const [place, amount] of amounts(unit)) {
      cluster.set(place, (cluster.get(place) ?? 0) + amount);
      size = Math.max(size, place + 1);
    }
  }
  const clusters = [...byCluster.keys()].sort().flatMap((key) => byCluster.get(key) ?? []);
  const sums = new Float64Array(size);
  for (const cluster of clusters) {
    for (const [place, amount] of cluster) sums[place] = (sums[place] ?? 0) + amount;
  }
  return { clusters, sums };
}

/** True where all units are of the same two observers: who is a and who b then means something. */
export function isOnePair(units: readonly ComparedUnit[]): boolean {
  return units.every((unit) => unit.a === units[0]?.a && unit.b === units[0].b);
}
