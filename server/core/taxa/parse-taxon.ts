import { nearestOf } from '../model/nearest.js';
import type { Species } from '../model/snapshot.js';
import { hybridOf, leafOf, LEAVES } from './leaf.js';
import { CODES_OF_SETS, GENUS_SETS, TRADE_SETS } from './named-sets.js';
import { OTHER_NAMES } from './other-names.js';
import { taxonKey } from './taxon-key.js';
import { say, type Saying } from '../model/saying.js';

export type ParsedTaxon =
  | { readonly ok: true; readonly candidates: readonly Species[] }
  | {
      readonly ok: false;
      /** A sentence without a full stop. */
      readonly problem: Saying;
      readonly expected: Saying;
      readonly nearest: string | null;
    };

const EXPECTED = say(
  'a scientific, English or French name, a four-letter code of the IBP–AOS list of 2025, a group such as Aythya sp., or a pair such as Aythya affinis/marila',
);

/** Key of a name → the species that it could be. */
const KNOWN = new Map<string, readonly Species[]>();
/** Names as they should be written, for suggestions. */
const WRITTEN: string[] = [];

function learn(name: string, candidates: readonly Species[]): void {
  KNOWN.set(taxonKey(name), candidates);
  WRITTEN.push(name);
}

for (const leaf of LEAVES) {
  learn(leaf.species, [leaf.species]);
  learn(leaf.english, [leaf.species]);
  if (leaf.french !== null) learn(leaf.french, [leaf.species]);
  if (leaf.code !== null) KNOWN.set(taxonKey(leaf.code), [leaf.species]);
}
for (const set of [...GENUS_SETS, ...TRADE_SETS]) learn(set.name, set.candidates);
// A bare "scaup" or "duck" can mean no more than the group.
for (const set of TRADE_SETS) KNOWN.set(taxonKey(set.name.replace(' sp.', '')), set.candidates);
// What English says already is not learned anew ("eider sp.").
for (const { french, candidates } of TRADE_SETS) {
  if (french !== null && !KNOWN.has(taxonKey(french))) learn(french, candidates);
}
for (const [other, name] of Object.entries(OTHER_NAMES)) {
  const candidates = KNOWN.get(taxonKey(name));
  if (candidates !== undefined) KNOWN.set(taxonKey(other), candidates);
}
for (const [code, text] of CODES_OF_SETS) {
  const candidates = resolveSlashed(text.split('/'));
  if (candidates !== null) KNOWN.set(taxonKey(code), candidates);
}

const CODES: readonly string[] = [
  ...LEAVES.flatMap((leaf) => (leaf.code === null ? [] : [leaf.code])),
  ...CODES_OF_SETS.keys(),
];

/** A name without a slash: known as it stands, or a hybrid of two known species. */
function resolveOne(text: string): readonly Species[] | null {
  const key = taxonKey(text);
  const known = KNOWN.get(key);
  if (known !== undefined) return known;
  const parts = key.replace(/ hybrid$/u, '').split(' x ');
  if (parts.length !== 2) return null;
  const parents = expandShortNames(parts).map((part) => KNOWN.get(taxonKey(part)));
  const [first, second] = parents.map((found) =>
    found?.length === 1 && found[0] !== undefined ? leafOf(found[0]) : null,
  );
  if (first?.kind !== 'species' || second?.kind !== 'species' || first === second) return null;
  return [hybridOf(first, second).species];
}

/**
 * Writes out what a list of names leaves to its neighbours: a genus said once or by its initial
 * (`Aythya marila/affinis`, `Aythya marila/A. affinis`), an English ending said once
 * (`Greater/Lesser Scaup`). A part that stands on its own is left alone.
 */
function expandShortNames(parts: readonly string[]): readonly string[] {
  const keys = parts.map(taxonKey);
  const lastWords = (keys.at(-1) ?? '').split(' ');
  let genus: string | null = null;
  return keys.map((key, index) => {
    let full = key;
    if (!KNOWN.has(key)) {
      const epithet = /^(?:([a-z]) )?([a-z]+)$/u.exec(key);
      const initialFits = epithet?.[1] === undefined || genus?.startsWith(epithet[1]) === true;
      const tries: string[] = [];
      if (genus !== null && epithet !== null && initialFits) {
        tries.push(`${genus} ${epithet[2] ?? ''}`);
      }
      if (index < keys.length - 1) {
        for (let from = 1; from < lastWords.length; from += 1) {
          tries.push(`${key} ${lastWords.slice(from).join(' ')}`);
        }
      }
      full = tries.find((attempt) => KNOWN.has(attempt)) ?? key;
    }
    const only = KNOWN.get(full);
    if (only?.length === 1 && only[0] !== undefined) {
      // The genus as written, so that a former genus carries over too.
      const isScientific = /^[a-z]+ [a-z]+$/u.test(full) && leafOf(only[0])?.kind === 'species';
      if (isScientific) genus = full.split(' ')[0] ?? null;
    }
    return full;
  });
}

function resolveSlashed(parts: readonly string[]): readonly Species[] | null {
  const found = expandShortNames(parts).map((part, index) =>
    // Hybrids are read from what was written, since a key has lost nothing they need.
    KNOWN.has(part) ? resolveOne(part) : resolveOne(parts[index] ?? part),
  );
  const all: Species[] = [];
  for (const candidates of found) {
    if (candidates === null) return null;
    all.push(...candidates);
  }
  return [...new Set(all)].sort();
}

function suggestion(text: string): string | null {
  const trimmed = text.trim();
  if (/^[A-Z]{4}$/u.test(trimmed)) return nearestOf(trimmed, CODES);
  if (!trimmed.includes('/')) return nearestOf(trimmed, WRITTEN);
  const mended = expandShortNames(trimmed.split('/')).map((part) =>
    KNOWN.has(part) ? part : nearestOf(part, WRITTEN),
  );
  if (mended.some((part) => part === null)) return null;
  return mended
    .map((part) => WRITTEN.find((name) => taxonKey(name) === taxonKey(part ?? '')) ?? part)
    .join('/');
}

/**
 * Reads an identification as anyone writes it: scientific, English or French name, four-letter code,
 * names joined by slashes, "Genus sp.", a group of the trade, a hybrid ("A x B").
 *
 * @returns the species it could be, sorted; or what is wrong, with the nearest name.
 * @example parseTaxon('GRSC/LESC') // { ok: true, candidates: ['Aythya affinis', 'Aythya marila'] }
 */
export function parseTaxon(text: string): ParsedTaxon {
  if (text.trim() === '') {
    return { ok: false, problem: say('no taxon is given'), expected: EXPECTED, nearest: null };
  }
  const candidates = resolveSlashed(text.split('/'));
  if (candidates !== null) return { ok: true, candidates };
  if (taxonKey(text) === 'cago') {
    return {
      ok: false,
      problem: say('"CAGO" is not in the IBP–AOS list of 2025, which keeps two geese apart'),
      expected: say('CANG for Canada Goose, CACG for Cackling Goose, or CCGO for either'),
      nearest: null,
    };
  }
  return {
    ok: false,
    problem: say('"{text}" is not a known taxon', { text: text.trim() }),
    expected: EXPECTED,
    nearest: suggestion(text),
  };
}
