import type { Species } from '../model/snapshot.js';
import { once } from '../once.js';
import { LEAVES } from './leaf.js';
import { DEFAULT_LOOK_ALIKES } from './look-alikes.js';
import { genusSets, tradeSets } from './named-sets.js';
import { parseTaxon } from './parse-taxon.js';
import { taxonKey } from './taxon-key.js';
import { commonName, taxonName } from './taxon-name.js';

export interface TaxonFound {
  /** Compiled name: scientific, pair or group. */
  readonly name: string;
  readonly candidates: readonly Species[];
}

interface Entry extends TaxonFound {
  /** Common names in every language, as keys. */
  readonly common: readonly string[];
  readonly code: string;
  readonly words: readonly string[];
  /** Lower comes first among equally good matches: regular species, sets, then the rest. */
  readonly order: number;
}

function entry(candidates: readonly Species[], code: string, order: number, alias = ''): Entry {
  const name = taxonName(candidates);
  const common = [commonName(candidates, 'en'), commonName(candidates, 'fr'), alias];
  const words = [...common, name].join(' ').replace(/\//gu, ' ').split(' ').map(taxonKey);
  return { name, candidates, common: common.map(taxonKey), code: taxonKey(code), words, order };
}

/** Species, hybrids and domestic forms, groups and genera, and the pairs of look-alikes. */
function makeEntries(): readonly Entry[] {
  const all = [
    ...LEAVES.map((leaf) =>
      entry([leaf.species], leaf.code ?? '', leaf.rank + (leaf.regular ? 0 : 2000)),
    ),
    ...[...tradeSets(), ...genusSets()]
      .filter((set) => set.candidates.length > 1)
      .map((set, index) => entry(set.candidates, '', 1000 + index, set.name)),
    ...DEFAULT_LOOK_ALIKES.map((pair, index) => entry(pair, '', 1500 + index)),
  ];
  const unique = new Map<string, Entry>();
  for (const one of all) {
    const earlier = unique.get(one.name);
    unique.set(
      one.name,
      earlier === undefined
        ? one
        : {
            ...earlier,
            common: [...earlier.common, ...one.common],
            words: [...earlier.words, ...one.words],
          },
    );
  }
  return [...unique.values()];
}

const entries = once(makeEntries);

/** 0 = the code itself, 1 = begins the name, 2 = begins the code, 3 = words of the name, in part. */
function rank(one: Entry, key: string, words: readonly string[]): number | null {
  if (one.code === key) return 0;
  if ([...one.common, taxonKey(one.name)].some((name) => name.startsWith(key))) return 1;
  if (one.code !== '' && one.code.startsWith(key)) return 2;
  const fits = words.every((word) => one.words.some((known) => known.startsWith(word)));
  return fits ? 3 : null;
}

/**
 * Taxa for a form that a person types into, best first: what the text itself says, then codes and
 * names that begin with it, then names that have all its words in part ("gr sc" finds Greater
 * Scaup). Regular species come before groups, groups before pairs, pairs before vagrants.
 *
 * @param limit how many at most.
 */
export function searchTaxa(text: string, limit = 12): readonly TaxonFound[] {
  const key = taxonKey(text);
  if (key === '') return [];
  const words = key.split(/[ /]+/u).filter((word) => word !== '');
  const ranked = entries()
    .flatMap((one) => {
      const found = rank(one, key, words);
      return found === null ? [] : [{ one, found }];
    })
    .sort((a, b) => a.found - b.found || a.one.order - b.one.order);
  const results = ranked.map(({ one }) => ({
    name: one.name,
    candidates: one.candidates,
  }));
  const parsed = parseTaxon(text);
  if (!parsed.ok) return results.slice(0, limit);
  const name = taxonName(parsed.candidates);
  const itself = { name, candidates: parsed.candidates };
  return [itself, ...results.filter((result) => result.name !== name)].slice(0, limit);
}
