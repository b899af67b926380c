import type { Species } from '../model/snapshot.js';
import { FRENCH_NAMES } from './french-names.js';
import { FAMILY_OF_GROUP, SPECIES_LIST, type SpeciesGroup } from './species-list.js';

/** The finest that an identification can be: a species, a hybrid or a domestic form. */
export interface Leaf {
  /** How it is stored: the scientific name, `Genus a x b` for a hybrid. */
  readonly species: Species;
  /** Four-letter code of the IBP–AOS list, if it has one. */
  readonly code: string | null;
  readonly english: string;
  /** Species, their domestic forms and their hybrids have one. */
  readonly french: string | null;
  readonly family: string;
  readonly group: SpeciesGroup;
  /** A regular winter bird of the region, see `species-list.ts`. */
  readonly regular: boolean;
  readonly kind: 'species' | 'hybrid' | 'domestic form';
  /** Place in the check-list's order. */
  readonly rank: number;
}

const SPECIES_LEAVES: readonly Leaf[] = SPECIES_LIST.map(
  ([code, english, scientific, group, occurrence], rank) => ({
    species: scientific,
    code,
    english,
    french: FRENCH_NAMES[scientific] ?? null,
    family: FAMILY_OF_GROUP[group],
    group,
    regular: occurrence === 'regular',
    kind: 'species',
    rank,
  }),
);

/** Domestic birds that live with wild ones; they have no code (common practice, no source). */
const DOMESTIC_FORMS: readonly (readonly [parent: Species, english: string])[] = [
  ['Anas platyrhynchos', 'Mallard (domestic type)'],
  ['Anser anser', 'Graylag Goose (domestic type)'],
  ['Cairina moschata', 'Muscovy Duck (domestic type)'],
];

const DOMESTIC_LEAVES: readonly Leaf[] = DOMESTIC_FORMS.flatMap(([parent, english]) =>
  SPECIES_LEAVES.filter((leaf) => leaf.species === parent).map((leaf) => ({
    ...leaf,
    species: `${parent} (domestic type)`,
    code: null,
    english,
    french: leaf.french === null ? null : `${leaf.french} (type domestique)`,
    regular: false,
    kind: 'domestic form' as const,
    rank: leaf.rank + 0.5,
  })),
);

/** Codes that the list has for hybrids; other hybrids have none. */
const HYBRID_CODES: ReadonlyMap<Species, string> = new Map([
  ['Anser caerulescens x rossii', 'SRGH'],
  ['Anas platyrhynchos x rubripes', 'MBDH'],
]);

const BY_NAME: ReadonlyMap<Species, Leaf> = new Map(
  [...SPECIES_LEAVES, ...DOMESTIC_LEAVES].map((leaf) => [leaf.species, leaf]),
);

/** The last words that two English names share: "Goose" of Snow Goose and Ross's Goose. */
function sharedEnding(names: readonly string[]): string {
  const split = names.map((name) => name.split(' '));
  const ending: string[] = [];
  for (let back = 1; ; back += 1) {
    const word = split[0]?.at(-back);
    // One word of each name must be left over, or nothing would tell them apart.
    if (word === undefined || split.some((words) => words.at(-back) !== word)) break;
    if (split.some((words) => words.length <= back)) break;
    ending.unshift(word);
  }
  return ending.join(' ');
}

/** Joins English names and says their shared ending once: "Greater/Lesser Scaup". */
export function joinEnglish(names: readonly string[], joint: string): string {
  const ending = sharedEnding(names);
  if (ending === '') return names.join(joint);
  const starts = names.map((name) => name.slice(0, name.length - ending.length - 1));
  return `${starts.join(joint)} ${ending}`;
}

/** The first words that French names share: "Macreuse" of Macreuse brune and Macreuse à front blanc. */
function sharedBeginning(names: readonly string[]): string {
  const split = names.map((name) => name.split(' '));
  const beginning: string[] = [];
  for (let at = 0; ; at += 1) {
    const word = split[0]?.[at];
    if (word === undefined || split.some((words) => words[at] !== word)) break;
    if (split.some((words) => words.length <= at + 1)) break;
    beginning.push(word);
  }
  return beginning.join(' ');
}

/** Joins French names and says their shared beginning once: "Macreuse brune/à front blanc". */
export function joinFrench(names: readonly string[], joint: string): string {
  const beginning = sharedBeginning(names);
  if (beginning === '') return names.join(joint);
  const endings = names.map((name) => name.slice(beginning.length + 1));
  return `${beginning} ${endings.join(joint)}`;
}

/**
 * The hybrid of two species, a leaf of its own: its candidate set is itself, never its parents.
 * Named with the parents in alphabetical order, the genus once where both share it.
 */
export function hybridOf(one: Leaf, other: Leaf): Leaf {
  const [first, second] = one.species < other.species ? [one, other] : [other, one];
  const genus = (leaf: Leaf): string => leaf.species.split(' ')[0] ?? '';
  const secondName =
    genus(first) === genus(second)
      ? second.species.slice(genus(second).length + 1)
      : second.species;
  const species = `${first.species} x ${secondName}`;
  const byRank = [first, second].sort((a, b) => a.rank - b.rank);
  return {
    species,
    code: HYBRID_CODES.get(species) ?? null,
    english: `${joinEnglish(
      byRank.map((leaf) => leaf.english),
      ' x ',
    )} hybrid`,
    french: frenchHybrid(byRank),
    family: first.family,
    group: first.group,
    regular: false,
    kind: 'hybrid',
    rank: Math.min(first.rank, second.rank) + 0.25,
  };
}

function frenchHybrid(parents: readonly Leaf[]): string | null {
  const names = parents.flatMap(({ french }) => french ?? []);
  return names.length < parents.length ? null : `Hybride ${joinFrench(names, ' x ')}`;
}

/** The leaf that is stored under this name, hybrids of known species included; `null` if none. */
export function leafOf(name: Species): Leaf | null {
  const known = BY_NAME.get(name);
  if (known !== undefined) return known;
  const [first, second, ...more] = name.split(' x ');
  if (first === undefined || second === undefined || more.length > 0) return null;
  const full = second.includes(' ') ? second : `${first.split(' ')[0] ?? ''} ${second}`;
  const parents = [BY_NAME.get(first), BY_NAME.get(full)];
  if (parents[0]?.kind !== 'species' || parents[1]?.kind !== 'species') return null;
  const hybrid = parents[0] === parents[1] ? null : hybridOf(parents[0], parents[1]);
  return hybrid?.species === name ? hybrid : null;
}

const CODED_HYBRIDS: readonly Leaf[] = [...HYBRID_CODES.keys()].flatMap((name) => {
  const leaf = leafOf(name);
  return leaf === null ? [] : [leaf];
});

/** Every species, the domestic forms, and the hybrids that have a code, in check-list order. */
export const LEAVES: readonly Leaf[] = [
  ...SPECIES_LEAVES,
  ...DOMESTIC_LEAVES,
  ...CODED_HYBRIDS,
].sort((a, b) => a.rank - b.rank);
