import { seededRandom } from '../math/seeded-random.js';
import type { Statistic } from '../model/agreement.js';
import type { ComparedUnit } from './compared-units.js';
import { krippendorffAlpha, krippendorffAlphaInterval, type Unit } from './krippendorff-alpha.js';
import { noStatistic, statisticOf } from './statistic.js';

/** Fixed, so that the same count always has the same bytes; the number itself means nothing. */
const SEED = 20270117;
const LEVEL = 0.95;

/**
 * Krippendorff's alpha of the totals of groups, ratio metric: agreement of all observers at once, with
 * gaps where somebody did not count a group, and with zeros. An observer whose total differs by whom
 * it is compared with (birds outside the other's scope) enters with the largest.
 */
export function totalsAlphaOf(units: readonly ComparedUnit[], minimumUnits: number): Statistic {
  const byCluster = new Map<string, Map<string, number>>();
  for (const { cluster, a, b, totalA, totalB } of units) {
    const totals = byCluster.get(cluster) ?? new Map<string, number>();
    byCluster.set(cluster, totals);
    totals.set(a, Math.max(totalA, totals.get(a) ?? 0));
    totals.set(b, Math.max(totalB, totals.get(b) ?? 0));
  }
  const rows = [...byCluster.keys()].sort().map((cluster): Unit => {
    // By size, so that nothing depends on observers' names.
    return [...(byCluster.get(cluster)?.values() ?? [])].sort((one, other) => one - other);
  });
  const n = rows.length;
  if (n < Math.max(2, minimumUnits)) return noStatistic(n);
  return statisticOf(
    krippendorffAlpha(rows, 'ratio'),
    krippendorffAlphaInterval(rows, 'ratio', seededRandom(SEED), LEVEL),
    n,
  );
}
