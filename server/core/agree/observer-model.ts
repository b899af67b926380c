import type {
  CriticalValues,
  ObserverConsistency,
  ObserverModel,
  Statistic,
} from '../model/agreement.js';
import { mean } from '../math/sum.js';
import type { FullTotal } from './full-totals.js';
import { hCriticalValue, kCriticalValue, mandelConsistency } from './mandel-consistency.js';
import type { Measured } from './measured.js';
import { noStatistic, statisticOf } from './statistic.js';
import { twoWayModel, type Component } from './two-way-model.js';

/** As disagreements are: 5 % questioned, 1 % serious (ISO 5725-2, stragglers and outliers). */
const [QUESTIONED, SERIOUS] = [0.05, 0.01];

/**
 * The two-way model of ln totals: what is between groups, between observers, and neither, and how each
 * observer stands to the others on the same birds. Groups of which one saw none have no logarithm and
 * rest on the others. `null` below `minimumUnits` groups that two or more saw.
 */
export function observerModelOf(
  totals: readonly FullTotal[],
  minimumUnits: number,
): ObserverModel | null {
  const measured = logTotals(totals);
  const groups = new Set(measured.map(({ cell }) => cell)).size;
  const model = groups < minimumUnits ? null : twoWayModel(measured);
  if (model === null) return null;
  const component = ({ variance, interval }: Component, n: number): Statistic =>
    statisticOf(variance, interval, n);
  const inCells = new Set(model.observers.map(({ observer }) => observer)).size;
  return {
    n: model.n,
    groups,
    betweenGroups: component(model.betweenCells, groups),
    betweenObservers: component(model.betweenObservers, inCells),
    residual: component(model.residual, model.n),
    observers: model.observers.map(({ observer, effect, interval, n, set }) => ({
      observer,
      ratio:
        n < Math.max(2, minimumUnits)
          ? noStatistic(n)
          : statisticOf(
              Math.exp(effect),
              { low: Math.exp(interval.low), high: Math.exp(interval.high) },
              n,
            ),
      set,
    })),
  };
}

/**
 * Mandel's h and k with observers as laboratories and, as their values, the ln ratios of their totals
 * to the mean of the group: for every set of three observers or more who counted the same groups, as
 * ratios to the mean of others would not be the same thing. Sets with fewer than `minimumUnits` groups
 * are left out, and those whose means do not differ.
 */
export function observerConsistencyOf(
  totals: readonly FullTotal[],
  minimumUnits: number,
): ObserverConsistency[] {
  const byGroup = new Map<string, Measured[]>();
  for (const each of logTotals(totals)) {
    byGroup.set(each.cell, [...(byGroup.get(each.cell) ?? []), each]);
  }
  const bySet = new Map<string, Measured[][]>();
  for (const group of [...byGroup.keys()].sort()) {
    const row = [...(byGroup.get(group) ?? [])].sort((a, b) => (a.observer < b.observer ? -1 : 1));
    const key = row.map(({ observer }) => observer).join('\n');
    if (row.length >= 3) bySet.set(key, [...(bySet.get(key) ?? []), row]);
  }
  return [...bySet.keys()].sort().flatMap((key) => {
    const rows = bySet.get(key) ?? [];
    return rows.length < Math.max(2, minimumUnits) ? [] : consistencyOf(key.split('\n'), rows);
  });
}

function consistencyOf(
  observers: readonly string[],
  rows: readonly (readonly Measured[])[],
): ObserverConsistency[] {
  // Rounded, so that ratios that are all 1 do not differ by their last bits.
  const ratios = observers.map((_, place) =>
    rows.map((row) =>
      rounded((row[place]?.value ?? NaN) - mean(row.map(({ value }) => value)), 12),
    ),
  );
  const found = mandelConsistency(ratios, QUESTIONED);
  if (found === null) return [];
  const groups = rows.length;
  const others = (observers.length - 1) * (groups - 1);
  const critical = (of: (significance: number) => number): CriticalValues => ({
    questioned: rounded(of(QUESTIONED)),
    serious: rounded(of(SERIOUS)),
  });
  return [
    {
      groups,
      hCritical: critical((significance) => hCriticalValue(observers.length, significance)),
      kCritical: critical((significance) => kCriticalValue(groups - 1, others, significance)),
      observers: found.laboratories.map(({ h, k }, place) => ({
        observer: observers[place] ?? '',
        h: h === null ? null : rounded(h),
        k: k === null ? null : rounded(k),
      })),
    },
  ];
}

/** ln totals of groups that two or more saw some of. */
function logTotals(totals: readonly FullTotal[]): Measured[] {
  const seen = totals.filter(({ number }) => number > 0);
  const times = new Map<string, number>();
  for (const { group } of seen) times.set(group, (times.get(group) ?? 0) + 1);
  return seen
    .filter(({ group }) => (times.get(group) ?? 0) > 1)
    .map(({ group, observer, number }) => ({ cell: group, observer, value: Math.log(number) }));
}

function rounded(value: number, decimals = 6): number {
  return Math.round(value * 10 ** decimals) / 10 ** decimals + 0;
}
