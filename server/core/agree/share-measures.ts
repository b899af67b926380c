import type { Interval } from '../math/bootstrap.js';
import type { AgreementMeasures, Statistic } from '../model/agreement.js';
import { brayCurtis } from './bray-curtis.js';
import { clusterBootstrapIntervals, type OfSums } from './cluster-bootstrap.js';
import { sumByCluster } from './cluster-sums.js';
import type { ComparedUnit } from './compared-units.js';
import { clopperPearsonInterval } from './proportion-interval.js';
import { noStatistic, statisticOf } from './statistic.js';
import { isWithinTolerance } from './within-tolerance.js';

const LEVEL = 0.95;

/** Sums that the shares are made of. */
const [AGREED, COMPARED, MATCHED, COUNTED, WITHIN, UNITS] = [0, 1, 2, 3, 4, 5];

/**
 * Shares of birds, and of groups, over all units, with the cluster bootstrap's interval. Where every
 * unit agrees in full (or not at all) the bootstrap has nothing to vary; the interval is then that of
 * Clopper & Pearson for n of n (or 0 of n) clusters.
 */
export function shareMeasuresOf(
  units: readonly ComparedUnit[],
  minimumUnits: number,
): Pick<AgreementMeasures, 'percentAgreement' | 'brayCurtisSimilarity' | 'withinTolerance'> {
  const { clusters, sums } = sumByCluster(units, (unit) => [
    [AGREED, unit.agreed],
    [COMPARED, unit.compared],
    [MATCHED, 2 * Math.min(unit.totalA, unit.totalB)],
    [COUNTED, unit.totalA + unit.totalB],
    [WITHIN, isWithinTolerance(unit.totalA, unit.totalB) ? 1 : 0],
    [UNITS, 1],
  ]);
  const n = clusters.length;
  if (n < Math.max(2, minimumUnits)) {
    const none = noStatistic(n);
    return { percentAgreement: none, brayCurtisSimilarity: none, withinTolerance: none };
  }
  const part =
    (of: number, all: number): OfSums =>
    (totals) =>
      (totals[of] ?? 0) / (totals[all] ?? 0);
  // 1 − Σ|a − b| / Σ(a + b) = 2 Σ min(a, b) / Σ(a + b)
  const shares = [part(AGREED, COMPARED), part(MATCHED, COUNTED), part(WITHIN, UNITS)];
  const intervals = clusterBootstrapIntervals(clusters, sums.length, shares, LEVEL);
  const share = (value: number | null, interval: Interval | null = null): Statistic =>
    value === 0 || value === 1
      ? statisticOf(value, clopperPearsonInterval(value * n, n, LEVEL), n)
      : statisticOf(value, interval, n);
  const dissimilarity =
    brayCurtis(
      units.map((unit) => unit.totalA),
      units.map((unit) => unit.totalB),
    ) ?? NaN;
  return {
    percentAgreement: share(shares[0]?.(sums) ?? null, intervals[0]),
    brayCurtisSimilarity: share(1 - dissimilarity, intervals[1]),
    withinTolerance: share(shares[2]?.(sums) ?? null, intervals[2]),
  };
}
