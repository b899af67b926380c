import type { Interval } from '../math/bootstrap.js';
import type { AgreementMeasures } from '../model/agreement.js';
import { clusterBootstrapIntervals, type OfSums } from './cluster-bootstrap.js';
import { isOnePair, sumByCluster } from './cluster-sums.js';
import type { ComparedUnit } from './compared-units.js';
import { clopperPearsonInterval } from './proportion-interval.js';
import { noStatistic, statisticOf } from './statistic.js';

const LEVEL = 0.95;

/** Sums that kappas are made of: birds named, the same by both, overlapping, then names by a and by b. */
const [NAMED, SAME, OVERLAPPING, FIRST_NAME] = [0, 1, 2, 3];

type NameMeasures = Pick<AgreementMeasures, 'kappa' | 'weightedKappa' | 'adjustedKappa'>;

/**
 * Kappas of the names given to birds that both saw, with the cluster bootstrap's intervals: Cohen's
 * (1960), weighted by the overlap of candidate sets |S ∩ T| / |S ∪ T| (Cohen 1968; Jaccard 1901), and
 * adjusted for prevalence and bias (Byrt, Bishop & Carlin 1993). Of several pairs of observers taken
 * together each bird counts both ways round, which makes Cohen's kappa that of Fleiss (1971) for two
 * raters, whoever they are.
 *
 * Where all names are the same in every cluster, the lower limit takes the share named the same from
 * Clopper & Pearson for n of n clusters, with chance agreement as found.
 */
export function nameMeasuresOf(units: readonly ComparedUnit[], minimumUnits: number): NameMeasures {
  const onePair = isOnePair(units);
  const named = units.filter((unit) => unit.named.length > 0);
  const { names, overlapOf, overlaps } = namesOf(named);
  const rank = new Map(names.map((name, index) => [name, index]));
  const byA = (name: string): number => FIRST_NAME + (rank.get(name) ?? 0);
  const byB = (name: string): number => byA(name) + names.length;
  const { clusters, sums } = sumByCluster(named, (unit) =>
    unit.named.flatMap(({ a, b, number }): [number, number][] => {
      const shared: [number, number][] = [
        [NAMED, number],
        [SAME, a === b ? number : 0],
        [OVERLAPPING, number * overlapOf(a, b)],
      ];
      const half = number / 2;
      return onePair
        ? [...shared, [byA(a), number], [byB(b), number]]
        : [...shared, [byA(a), half], [byA(b), half], [byB(a), half], [byB(b), half]];
    }),
  );
  const n = clusters.length;
  if (n < Math.max(2, minimumUnits)) {
    const none = noStatistic(n);
    return { kappa: none, weightedKappa: none, adjustedKappa: none };
  }
  const chance = (totals: Float64Array): number => {
    let expected = 0;
    for (let place = FIRST_NAME; place < FIRST_NAME + names.length; place += 1) {
      expected += (totals[place] ?? 0) * (totals[place + names.length] ?? 0);
    }
    return expected / (totals[NAMED] ?? 0) ** 2;
  };
  const weightedChance = (totals: Float64Array): number => {
    let expected = 0;
    for (const [i, j, overlap] of overlaps) {
      expected +=
        overlap * (totals[FIRST_NAME + i] ?? 0) * (totals[FIRST_NAME + names.length + j] ?? 0);
    }
    return expected / (totals[NAMED] ?? 0) ** 2;
  };
  const evenChance = (): number => 1 / names.length;
  const share = (totals: Float64Array, of: number): number =>
    (totals[of] ?? 0) / (totals[NAMED] ?? 0);
  const statistics: OfSums[] = [
    (totals) => beyond(share(totals, SAME), chance(totals)),
    (totals) => beyond(share(totals, OVERLAPPING), weightedChance(totals)),
    (totals) => beyond(share(totals, SAME), evenChance()),
  ];
  const intervals = clusterBootstrapIntervals(clusters, sums.length, statistics, LEVEL);
  const allSame = (sums[SAME] ?? 0) === (sums[NAMED] ?? 0);
  const leastSame = clopperPearsonInterval(n, n, LEVEL).low;
  const chances = [chance(sums), weightedChance(sums), evenChance()];
  const [kappa, weightedKappa, adjustedKappa] = statistics.map((statistic, index) => {
    const interval: Interval | null = allSame
      ? { low: Math.max(-1, beyond(leastSame, chances[index] ?? NaN) ?? -1), high: 1 }
      : (intervals[index] ?? null);
    return statisticOf(statistic(sums), interval, n);
  });
  const none = noStatistic(n);
  return {
    kappa: kappa ?? none,
    weightedKappa: weightedKappa ?? none,
    adjustedKappa: adjustedKappa ?? none,
  };
}

/** Agreement beyond chance; `null` where chance alone would agree on all. */
function beyond(observed: number, expected: number): number | null {
  return 1 - expected < 1e-9 ? null : (observed - expected) / (1 - expected);
}

interface Names {
  /** Sorted. */
  readonly names: readonly string[];
  readonly overlapOf: (one: string, other: string) => number;
  /** Places of every two names whose candidate sets overlap, and how far: a name with itself 1. */
  readonly overlaps: readonly (readonly [one: number, other: number, overlap: number])[];
}

function namesOf(units: readonly ComparedUnit[]): Names {
  const sets = new Map<string, ReadonlySet<string>>();
  for (const { candidates } of units) {
    for (const [name, set] of candidates) if (!sets.has(name)) sets.set(name, new Set(set));
  }
  const overlapOf = (one: string, other: string): number =>
    one === other ? 1 : jaccard(sets.get(one), sets.get(other));
  const used = new Set(units.flatMap((unit) => unit.named.flatMap(({ a, b }) => [a, b])));
  const names = [...used].sort();
  const overlaps = names.flatMap((one, i) =>
    names.flatMap((other, j) => {
      const overlap = overlapOf(one, other);
      return overlap > 0 ? [[i, j, overlap] as const] : [];
    }),
  );
  return { names, overlapOf, overlaps };
}

/** Species in both, of species in either. */
function jaccard(
  one: ReadonlySet<string> = new Set(),
  other: ReadonlySet<string> = new Set(),
): number {
  const shared = [...one].filter((species) => other.has(species)).length;
  const all = one.size + other.size - shared;
  return all === 0 ? 0 : shared / all;
}
