import { nearestOf } from '../model/nearest.js';
import type { Species } from '../model/snapshot.js';
import { once } from '../once.js';
import { hybridOf, leafOf, LEAVES } from './leaf.js';
import { CODES_OF_SETS, genusSets, tradeSets } from './named-sets.js';
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

/** Names that are read: by their key, the species that each could be; and as they should be written. */
interface Names {
  readonly known: Map<string, readonly Species[]>;
  readonly written: string[];
}

const learntNames = once((): Names => {
  const names: Names = { known: new Map(), written: [] };
  const { known } = names;
  const learn = (name: string, candidates: readonly Species[]): void => {
    known.set(taxonKey(name), candidates);
    names.written.push(name);
  };
  for (const leaf of LEAVES) {
    learn(leaf.species, [leaf.species]);
    learn(leaf.english, [leaf.species]);
    if (leaf.french !== null) learn(leaf.french, [leaf.species]);
    if (leaf.code !== null) known.set(taxonKey(leaf.code), [leaf.species]);
  }
  for (const set of [...genusSets(), ...tradeSets()]) learn(set.name, set.candidates);
  // A bare "scaup" or "duck" can mean no more than the group.
  for (const set of tradeSets()) known.set(taxonKey(set.name.replace(' sp.', '')), set.candidates);
  // What English says already is not learned anew ("eider sp.").
  for (const { french, candidates } of tradeSets()) {
    if (french !== null && !known.has(taxonKey(french))) learn(french, candidates);
  }
  for (const [other, name] of Object.entries(OTHER_NAMES)) {
    const candidates = known.get(taxonKey(name));
    if (candidates !== undefined) known.set(taxonKey(other), candidates);
  }
  for (const [code, text] of CODES_OF_SETS) {
    const candidates = resolveSlashed(text.split('/'), known);
    if (candidates !== null) known.set(taxonKey(code), candidates);
  }
  return names;
});

/** A species, or species of one genus, written as they are stored: that needs none of the other names. */
function asStored(text: string): readonly Species[] | null {
  const [first = '', ...others] = text.split('/');
  const genus = first.split(' ')[0] ?? '';
  const leaves = [first, ...others.map((other) => `${genus} ${other}`)].map(leafOf);
  const species = leaves.flatMap((leaf) => leaf?.species ?? []);
  return species.length < leaves.length ? null : [...new Set(species)].sort();
}

/** A name without a slash: known as it stands, or a hybrid of two known species. */
function resolveOne(text: string, known: Names['known']): readonly Species[] | null {
  const key = taxonKey(text);
  const whole = known.get(key);
  if (whole !== undefined) return whole;
  const parts = key.replace(/ hybrid$/u, '').split(' x ');
  if (parts.length !== 2) return null;
  const parents = expandShortNames(parts, known).map((part) => known.get(taxonKey(part)));
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
function expandShortNames(parts: readonly string[], known: Names['known']): readonly string[] {
  const keys = parts.map(taxonKey);
  const lastWords = (keys.at(-1) ?? '').split(' ');
  let genus: string | null = null;
  return keys.map((key, index) => {
    let full = key;
    if (!known.has(key)) {
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
      full = tries.find((attempt) => known.has(attempt)) ?? key;
    }
    const only = known.get(full);
    if (only?.length === 1 && only[0] !== undefined) {
      // The genus as written, so that a former genus carries over too.
      const isScientific = /^[a-z]+ [a-z]+$/u.test(full) && leafOf(only[0])?.kind === 'species';
      if (isScientific) genus = full.split(' ')[0] ?? null;
    }
    return full;
  });
}

function resolveSlashed(
  parts: readonly string[],
  known: Names['known'],
): readonly Species[] | null {
  const found = expandShortNames(parts, known).map((part, index) =>
    // Hybrids are read from what was written, since a key has lost nothing they need.
    resolveOne(known.has(part) ? part : (parts[index] ?? part), known),
  );
  const all: Species[] = [];
  for (const candidates of found) {
    if (candidates === null) return null;
    all.push(...candidates);
  }
  return [...new Set(all)].sort();
}

/** In the order of the list. */
function codes(): readonly string[] {
  return [
    ...LEAVES.flatMap((leaf) => (leaf.code === null ? [] : [leaf.code])),
    ...CODES_OF_SETS.keys(),
  ];
}

function suggestion(text: string): string | null {
  const { known, written } = learntNames();
  const trimmed = text.trim();
  if (/^[A-Z]{4}$/u.test(trimmed)) return nearestOf(trimmed, codes());
  if (!trimmed.includes('/')) return nearestOf(trimmed, written);
  const mended = expandShortNames(trimmed.split('/'), known).map((part) =>
    known.has(part) ? part : nearestOf(part, written),
  );
  if (mended.some((part) => part === null)) return null;
  return mended
    .map((part) => written.find((name) => taxonKey(name) === taxonKey(part ?? '')) ?? part)
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
  const candidates = asStored(text) ?? resolveSlashed(text.split('/'), learntNames().known);
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
