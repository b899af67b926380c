import type { Intraclass } from '../model/agreement.js';
import type { FullTotal } from './full-totals.js';
import { intraclassCorrelations, type Icc } from './intraclass-correlation.js';
import { noStatistic, statisticOf } from './statistic.js';

const FORMS = [
  'oneWaySingle',
  'oneWayMean',
  'agreementSingle',
  'agreementMean',
  'consistencySingle',
  'consistencyMean',
] as const;

/**
 * Intraclass correlations of ln totals, for every two observers and for every larger set that counted
 * a cell together: over the groups that all of the set counted and saw some of.
 */
export function intraclassSets(totals: readonly FullTotal[], minimumUnits: number): Intraclass[] {
  const byGroup = new Map<string, Map<string, number>>();
  const byCell = new Map<string, Set<string>>();
  for (const { group, cell, observer, number } of totals) {
    byCell.set(cell, (byCell.get(cell) ?? new Set()).add(observer));
    byGroup.set(group, (byGroup.get(group) ?? new Map<string, number>()).set(observer, number));
  }
  const rows = [...byGroup.keys()].sort().flatMap((group) => byGroup.get(group) ?? []);
  return setsOf(byCell.values()).map((observers) => {
    const ratings = rows
      .map((row) => observers.map((observer) => row.get(observer) ?? 0))
      .filter((row) => row.every((number) => number > 0))
      .map((row) => row.map(Math.log));
    const n = ratings.length;
    const found = n < Math.max(3, minimumUnits) ? null : intraclassCorrelations(ratings);
    const statistic = (icc: Icc | undefined): ReturnType<typeof noStatistic> =>
      icc === undefined ? noStatistic(n) : statisticOf(icc.value, icc, n);
    const forms = FORMS.map((form) => [form, statistic(found?.[form])] as const);
    return { observers, ...(Object.fromEntries(forms) as Omit<Intraclass, 'observers'>) };
  });
}

/** Every pair within a cell, and the cell's observers together; sorted, each once. */
function setsOf(cells: Iterable<ReadonlySet<string>>): string[][] {
  const sets = new Map<string, string[]>();
  const add = (set: string[]): void => void sets.set(set.join('\n'), set);
  for (const cell of cells) {
    const observers = [...cell].sort();
    observers.forEach((one, place) => {
      for (const other of observers.slice(place + 1)) add([one, other]);
    });
    if (observers.length > 2) add(observers);
  }
  return [...sets.keys()].sort().flatMap((key) => [sets.get(key) ?? []]);
}
