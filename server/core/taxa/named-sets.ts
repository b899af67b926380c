import type { Species } from '../model/snapshot.js';
import { once } from '../once.js';
import { LEAVES, type Leaf } from './leaf.js';

/** A name that stands for several species: a genus, or a group of the trade. */
export interface NamedSet {
  /** As it is written in a compiled count: "Aythya sp.", "diving duck sp." */
  readonly name: string;
  /** In French, for a group of the trade; a genus is called the same in every language. */
  readonly french: string | null;
  /** Sorted. */
  readonly candidates: readonly Species[];
}

const species = once(() => LEAVES.filter((leaf) => leaf.kind === 'species'));

function members(belongs: (leaf: Leaf) => boolean): readonly Species[] {
  const all = species().filter(belongs);
  const regular = all.filter((leaf) => leaf.regular);
  // A genus that has no regular member here can only mean the ones that it has.
  return (regular.length > 0 ? regular : all).map((leaf) => leaf.species).sort();
}

const genusOf = (leaf: Leaf): string => leaf.species.split(' ')[0] ?? '';

/** "Genus sp." for every genus of the list: its regular members. */
export const genusSets = once((): readonly NamedSet[] =>
  [...new Set(species().map(genusOf))].sort().map((genus) => ({
    name: `${genus} sp.`,
    french: null,
    candidates: members((leaf) => genusOf(leaf) === genus),
  })),
);

const englishEndsIn =
  (...endings: readonly string[]) =>
  (leaf: Leaf): boolean =>
    endings.some((ending) => leaf.english.endsWith(ending));

const inGroup =
  (...groups: readonly Leaf['group'][]) =>
  (leaf: Leaf): boolean =>
    groups.includes(leaf.group);

const DUCKS = [
  'perching duck',
  'dabbling duck',
  'pochard',
  'sea duck',
  'merganser',
  'stiff-tailed duck',
] as const;

/**
 * Groups that observers write when a bird was too far away (common practice, no source). Members
 * are regular species only. Diving ducks are all ducks that dive: pochards, sea ducks (mergansers
 * among them) and Ruddy Duck. The French names are those of the trade too, from memory. Narrow before wide, so that the narrowest name is found first.
 */
export const tradeSets = once((): readonly NamedSet[] =>
  GROUPS.map(([name, french, belongs]) => ({ name, french, candidates: members(belongs) })),
);

const GROUPS = [
  ['scaup sp.', 'petit fuligule ou fuligule milouinan sp.', englishEndsIn('Scaup')],
  ['pochard sp.', 'fuligule sp.', inGroup('pochard')],
  ['goldeneye sp.', 'garrot sp.', englishEndsIn('Goldeneye')],
  ['merganser sp.', 'harle sp.', inGroup('merganser')],
  ['scoter sp.', 'macreuse sp.', englishEndsIn('Scoter')],
  ['eider sp.', 'eider sp.', englishEndsIn('Eider')],
  ['teal sp.', 'sarcelle sp.', englishEndsIn('Teal')],
  ['swan sp.', 'cygne sp.', inGroup('swan')],
  [
    'white goose sp.',
    'oie blanche sp.',
    (leaf) => ['Snow Goose', "Ross's Goose"].includes(leaf.english),
  ],
  ['white-cheeked goose sp.', 'bernache sp.', englishEndsIn('Canada Goose', 'Cackling Goose')],
  ['goose sp.', 'oie ou bernache sp.', inGroup('goose')],
  ['grebe sp.', 'grèbe sp.', inGroup('grebe')],
  ['loon sp.', 'plongeon sp.', inGroup('loon')],
  ['cormorant sp.', 'cormoran sp.', inGroup('cormorant')],
  ['pelican sp.', 'pélican sp.', inGroup('pelican')],
  ['sea duck sp.', 'canard de mer sp.', inGroup('sea duck', 'merganser')],
  ['dabbling duck sp.', 'canard barboteur sp.', inGroup('dabbling duck')],
  [
    'diving duck sp.',
    'canard plongeur sp.',
    inGroup('pochard', 'sea duck', 'merganser', 'stiff-tailed duck'),
  ],
  ['duck sp.', 'canard sp.', inGroup(...DUCKS)],
  ['waterfowl sp.', 'anatidé sp.', (leaf) => leaf.family === 'Anatidae'],
  ['waterbird sp.', 'oiseau aquatique sp.', () => true],
] as const satisfies readonly (readonly [string, string, (leaf: Leaf) => boolean])[];

/** Codes of the IBP–AOS list (2025) for pairs and unidentified birds, as texts to read. */
export const CODES_OF_SETS: ReadonlyMap<string, string> = new Map([
  ['SRGO', "Snow Goose/Ross's Goose"],
  ['CCGO', 'Cackling Goose/Canada Goose'],
  ['BCTE', 'Blue-winged Teal/Cinnamon Teal'],
  ['WCGR', "Western Grebe/Clark's Grebe"],
  ['UNGO', 'goose sp.'],
  ['UNDU', 'duck sp.'],
]);
