import { mean, sampleVariance } from '../math/sum.js';
import { studentTQuantile } from '../math/student-t.js';
import type { Agreement } from '../model/agreement.js';
import type { ComparedUnit } from './compared-units.js';
import { noStatistic, statisticOf } from './statistic.js';

const LEVEL = 0.95;

/**
 * How each observer's numbers stand to the others': 1 is level, under 1 runs low.
 *
 * For each group of a cell, the observer's total over the geometric mean of the totals of those who
 * counted it independently; then the geometric mean over groups, with Student's t interval on the
 * ln scale. Large and small groups weigh the same. Groups of which the one or the other saw none
 * have no ratio and are left out. Below `minimumUnits` groups (and never under two): no value.
 *
 * @returns every observer who is compared with somebody, by id
 */
export function observerRatios(
  units: readonly ComparedUnit[],
  minimumUnits: number,
): Agreement['observers'] {
  const logRatios = new Map<string, Map<string, number[]>>();
  const note = (observer: string, cluster: string, logRatio: number | null): void => {
    const ofObserver = logRatios.get(observer) ?? new Map<string, number[]>();
    logRatios.set(observer, ofObserver);
    if (logRatio !== null) {
      ofObserver.set(cluster, [...(ofObserver.get(cluster) ?? []), logRatio]);
    }
  };
  for (const { cluster, a, b, totalA, totalB } of units) {
    // A difference of logarithms only changes its sign where a and b are swapped; a quotient's
    // logarithm changes its last bits too.
    const logRatio = totalA > 0 && totalB > 0 ? Math.log(totalA) - Math.log(totalB) : null;
    note(a, cluster, logRatio);
    note(b, cluster, logRatio === null ? null : -logRatio);
  }
  return [...logRatios.keys()].sort().map((observer) => {
    // The mean of ln ratios to each of the others is the ln ratio to their geometric mean.
    const groups = [...(logRatios.get(observer)?.values() ?? [])].map(mean);
    const n = groups.length;
    if (n < Math.max(2, minimumUnits)) return { observer, ratio: noStatistic(n) };
    const centre = mean(groups);
    const standardError = Math.sqrt(sampleVariance(groups) / n);
    const reach = studentTQuantile((1 + LEVEL) / 2, n - 1) * standardError;
    const interval = { low: Math.exp(centre - reach), high: Math.exp(centre + reach) };
    return { observer, ratio: statisticOf(Math.exp(centre), interval, n) };
  });
}
