import type { EarlierNumber } from '../model/snapshot.js';
import { taxonName } from './taxon-name.js';

/** How often a taxon was met in the earlier years of a count. */
export interface ExpectedTaxon {
  readonly taxon: string;
  /** Years in which there were any. */
  readonly years: number;
  /** Birds a year over all earlier years; a year without a number of the taxon had none. */
  readonly meanNumber: number;
}

/**
 * What a count's earlier years let one expect: taxa by the number of years in which there were any,
 * then by birds a year, then by name. Taxa that no year had any of are left out.
 *
 * @example expectedTaxa([{ candidates: ['Gavia immer'], year: 2020, number: 4 }])
 * // [{ taxon: 'Gavia immer', years: 1, meanNumber: 4 }]
 */
export function expectedTaxa(history: readonly EarlierNumber[]): readonly ExpectedTaxon[] {
  const allYears = new Set(history.map(({ year }) => year)).size;
  const byTaxon = new Map<string, { years: Set<number>; birds: number }>();
  for (const { candidates, year, number } of history) {
    if (number === 0) continue;
    const taxon = taxonName(candidates);
    const entry = byTaxon.get(taxon) ?? { years: new Set<number>(), birds: 0 };
    entry.years.add(year);
    entry.birds += number;
    byTaxon.set(taxon, entry);
  }
  return [...byTaxon]
    .map(([taxon, { years, birds }]) => ({
      taxon,
      years: years.size,
      meanNumber: birds / allYears,
    }))
    .sort(
      (one, other) =>
        other.years - one.years ||
        other.meanNumber - one.meanNumber ||
        (one.taxon < other.taxon ? -1 : 1),
    );
}
