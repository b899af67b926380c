import type { Species } from '../../../server/core/model/snapshot.js';
import { DEFAULT_LOOK_ALIKES } from '../../../server/core/taxa/look-alikes.js';
import { genusSets, tradeSets } from '../../../server/core/taxa/named-sets.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { englishName, taxonName } from '../../../server/core/taxa/taxon-name.js';
import { commonName } from '../ui/taxon.js';

export interface WiderName {
  /** As it is sent. */
  readonly name: string;
  /** As it is read on the button. */
  readonly common: string;
  readonly candidates: readonly Species[];
}

/** Most that fit below a thumb without a search. */
const mostOffered = 4;

/**
 * Honest ways to say less: the pairs, genus and groups that contain an identification, narrow before
 * wide. A bird turned away, asleep or half hidden leaves the pair, and a pair is a good answer.
 * Pairs that share a genus come before pairs that only look alike.
 */
export function widerNames(candidates: readonly Species[]): readonly WiderName[] {
  const holds = (set: readonly Species[]): boolean =>
    set.length > candidates.length && candidates.every((species) => set.includes(species));
  const pairs = candidates.length === 1 ? DEFAULT_LOOK_ALIKES.filter(holds) : [];
  const sets = [
    ...pairs.map((pair) => ({ set: [...pair], order: sameName(pair) ? 0 : 3 })),
    ...genusSets()
      .filter(({ candidates: set }) => holds(set))
      .map(({ candidates: set }) => ({
        set,
        order: 1,
      })),
    ...tradeSets()
      .filter(({ candidates: set }) => holds(set))
      .map(({ candidates: set }) => ({
        set,
        order: 2,
      })),
  ];
  sets.sort((one, other) => one.order - other.order || one.set.length - other.set.length);
  const offered = new Map<string, WiderName>();
  for (const { set } of sets) {
    const name = taxonName(set);
    if (!offered.has(name)) offered.set(name, { name, common: commonName(set), candidates: set });
  }
  return [...offered.values()].slice(0, mostOffered);
}

/** The pair that observers mean most often when they cannot tell this species; `null` for the others. */
export function pairOf(taxon: string): Pick<WiderName, 'name' | 'common'> | null {
  const parsed = parseTaxon(taxon);
  const [species, ...more] = parsed.ok ? parsed.candidates : [];
  if (species === undefined || more.length > 0) return null;
  const pair = DEFAULT_LOOK_ALIKES.find((one) => one.includes(species) && sameName(one));
  return pair === undefined ? null : { name: taxonName(pair), common: commonName(pair) };
}

/** Greater and Lesser Scaup share their last word in English: the pair that observers mean most often. */
function sameName(pair: readonly Species[]): boolean {
  const last = pair.map((species) => englishName([species]).split(' ').at(-1));
  return last[0] === last[1];
}
