import type { Species } from '../model/snapshot.js';
import { joinEnglish, joinFrench, leafOf, type Leaf } from './leaf.js';
import { once } from '../once.js';
import { genusSets, tradeSets, type NamedSet } from './named-sets.js';

/** Below this a list of species says more than a name for all of them. */
const SMALLEST_NAMED = 3;
/** Above this a list of species is no longer readable, and names of sets stand for parts of it. */
const LONGEST_LIST = 4;

const named = once(() =>
  [...genusSets(), ...tradeSets()].filter((set) => set.candidates.length >= SMALLEST_NAMED),
);

const keyOf = (candidates: readonly Species[]): string => candidates.join('/');

const genusByKey = once(() => new Map(genusSets().map((set) => [keyOf(set.candidates), set])));
// "Aythya sp." is what the trade says; "pochard sp." is only understood.
const tradeByKey = once(
  () =>
    new Map(
      tradeSets()
        .filter((set) => set.name !== 'pochard sp.')
        .map((set) => [keyOf(set.candidates), set]),
    ),
);

function sortedSet(candidates: readonly Species[]): readonly Species[] {
  return [...new Set(candidates)].sort();
}

/** `Aythya affinis/marila` where all are species of one genus, otherwise every name in full. */
function slashed(candidates: readonly Species[]): string {
  const genus = candidates[0]?.split(' ')[0] ?? '';
  const oneGenus = candidates.every((name) => {
    const words = name.split(' ');
    return words.length === 2 && words[0] === genus;
  });
  if (!oneGenus) return candidates.join('/');
  return `${genus} ${candidates.map((name) => name.split(' ')[1] ?? '').join('/')}`;
}

/** Names for the parts of a large set, largest first, and the species that no name covers. */
function cover(candidates: readonly Species[]): {
  readonly sets: readonly NamedSet[];
  readonly rest: readonly Species[];
} {
  const within = new Set(candidates);
  const usable = named().filter((set) => set.candidates.every((name) => within.has(name)));
  const left = new Set(candidates);
  const sets: NamedSet[] = [];
  for (;;) {
    let best: NamedSet | null = null;
    let most = SMALLEST_NAMED - 1;
    for (const set of usable) {
      const covered = set.candidates.filter((name) => left.has(name)).length;
      if (covered > most) {
        best = set;
        most = covered;
      }
    }
    if (best === null) return { sets, rest: [...left].sort() };
    sets.push(best);
    for (const name of best.candidates) left.delete(name);
  }
}

/**
 * The name under which a candidate set is compiled: the scientific name of one species, a pair
 * `Aythya affinis/marila`, `Aythya sp.` or `diving duck sp.` for exactly the regular members of a
 * genus or group (the genus first), otherwise the species joined by slashes; sets of more than four
 * use names for their parts. `parseTaxon` reads every such name back to the same set.
 */
export function taxonName(candidates: readonly Species[]): string {
  const set = sortedSet(candidates);
  if (set.length < SMALLEST_NAMED) return slashed(set);
  const whole = genusByKey().get(keyOf(set)) ?? tradeByKey().get(keyOf(set));
  if (whole !== undefined) return whole.name;
  if (set.length <= LONGEST_LIST) return slashed(set);
  const { sets, rest } = cover(set);
  if (sets.length === 0) return slashed(set);
  return [...sets.map((part) => part.name), ...rest].join('/');
}

/** A language that species and groups have names in. */
export type NameLanguage = 'en' | 'fr';

const NAME_OF_LEAF = {
  en: (leaf: Leaf): string => leaf.english,
  fr: (leaf: Leaf): string => leaf.french ?? leaf.species,
};
const NAME_OF_SET = {
  en: (set: NamedSet): string => set.name,
  fr: (set: NamedSet): string => set.french ?? set.name,
};
const JOIN = { en: joinEnglish, fr: joinFrench };

function speciesByName(names: readonly Species[], language: NameLanguage): string {
  const known = names.map((name) => ({ name, leaf: leafOf(name) }));
  known.sort((a, b) => (a.leaf?.rank ?? Number.MAX_VALUE) - (b.leaf?.rank ?? Number.MAX_VALUE));
  const common = known.map(({ name, leaf }) => (leaf ? NAME_OF_LEAF[language](leaf) : name));
  // "Graylag Goose/Mallard (domestic type)" would say that the goose is wild.
  const allSpecies = known.every(({ leaf }) => leaf?.kind === 'species');
  return allSpecies ? JOIN[language](common, '/') : common.join('/');
}

/**
 * A candidate set by its common name: "Greater Scaup", "Greater/Lesser Scaup", "Aythya sp.", "scoter
 * sp."; in French "Fuligule milouinan", "Fuligule à collier/milouinan", "macreuse sp.".
 */
export function commonName(candidates: readonly Species[], language: NameLanguage): string {
  const set = sortedSet(candidates);
  if (set.length < SMALLEST_NAMED) return speciesByName(set, language);
  const group = tradeByKey().get(keyOf(set));
  const genus = genusByKey().get(keyOf(set));
  if (group !== undefined) return NAME_OF_SET[language](group);
  if (genus !== undefined) return genus.name;
  if (set.length <= LONGEST_LIST) return speciesByName(set, language);
  const { sets, rest } = cover(set);
  if (sets.length === 0) return speciesByName(set, language);
  const parts = sets.map((part) =>
    NAME_OF_SET[language](tradeByKey().get(keyOf(part.candidates)) ?? part),
  );
  return [...parts, ...rest.map((name) => speciesByName([name], language))].join('/');
}

/** The common name in English, as files and the command line write it. */
export function englishName(candidates: readonly Species[]): string {
  return commonName(candidates, 'en');
}
