import type { EarlierNumber } from '../core/model/snapshot.js';
import { COMMON_TAXA } from '../core/taxa/common-taxa.js';
import { expectedTaxa } from '../core/taxa/expected-taxa.js';
import { DEFAULT_LOOK_ALIKES } from '../core/taxa/look-alikes.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';
import { genusSets } from '../core/taxa/named-sets.js';
import { englishName, taxonName } from '../core/taxa/taxon-name.js';

/** Printed names that leave room for what nobody expected, on both sides of one sheet. */
const MOST = 22;

/**
 * The names that stand on a field sheet: what earlier years had, the most regular first, then what is
 * common on northern lakes. Right after the second of two look-alikes that share genus and last name,
 * such as two scaup, stand their pair and their genus: the honest coarser name is as near as the finer.
 */
export function sheetTaxa(history: readonly EarlierNumber[]): readonly string[] {
  const known = expectedTaxa(history).map(({ taxon }) => taxon);
  const names: string[] = [];
  const add = (name: string): void => {
    if (!names.includes(name)) names.push(name);
  };
  for (const taxon of [...known, ...COMMON_TAXA]) {
    const parsed = parseTaxon(taxon);
    if (!parsed.ok) continue;
    add(taxonName(parsed.candidates));
    const [species, ...others] = parsed.candidates;
    if (species === undefined || others.length > 0) continue;
    for (const pair of DEFAULT_LOOK_ALIKES.filter((one) => one.includes(species))) {
      const lastNames = new Set(pair.map((each) => englishName([each]).split(' ').at(-1)));
      const genera = new Set(pair.map((each) => each.split(' ')[0]));
      const isClose = lastNames.size === 1 && genera.size === 1;
      if (!isClose || !pair.every((each) => names.includes(each))) continue;
      add(taxonName([...pair].sort()));
      const all = genusSets().find(
        ({ candidates }) =>
          candidates.length > 2 && pair.every((each) => candidates.includes(each)),
      );
      if (all !== undefined) add(taxonName(all.candidates));
    }
  }
  return names.slice(0, MOST);
}
