import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { searchTaxa } from '../../../server/core/taxa/search-taxa.js';
import { commonName, readTaxon, type ReadTaxon } from '../ui/taxon.js';
import { COMMON_TAXA } from '../../../server/core/taxa/common-taxa.js';
import { pairOf, widerNames } from './wider-names.js';

/** Room for a thumb without scrolling. */
const MOST_FOUND = 8;
const MOST_QUICK = 12;
/** Looked through before the local ones are put first. */
const SEARCHED = 40;

/**
 * What to expect at this waterbody, most expected first: taxa of its earlier years if the count came
 * with any, else birds met on most northern lakes in January.
 *
 * @param expected the count's own, by the years in which there were any
 */
function localTaxa(expected: readonly string[]): readonly string[] {
  return expected.length === 0 ? COMMON_TAXA : expected;
}

/**
 * Taxa for what was typed: one whose code it is, then the local ones by how often they are expected,
 * then the others. Pairs and groups that the first one may be left as come right after it.
 */
export function foundTaxa(text: string, expected: readonly string[]): readonly ReadTaxon[] {
  if (text.trim() === '') return [];
  const places = new Map(localTaxa(expected).map((taxon, place) => [readTaxon(taxon).name, place]));
  const [best, ...others] = searchTaxa(text, SEARCHED);
  if (best === undefined) return [];
  const placed = (name: string): number => places.get(name) ?? places.size;
  // A code or a whole name says what it says, however rare the bird.
  const isItself = parseTaxon(text).ok;
  const sorted = (isItself ? others : [best, ...others]).toSorted(
    (one, other) => placed(one.name) - placed(other.name),
  );
  const found = new Map<string, ReadTaxon>();
  for (const { name, candidates } of isItself ? [best, ...sorted] : sorted) {
    found.set(name, { name, common: commonName(candidates) });
    if (found.size === 1) {
      for (const wider of widerNames(candidates).slice(0, 2)) found.set(wider.name, wider);
    }
  }
  return [...found.values()].slice(0, MOST_FOUND).map(({ name, common }) => ({ name, common }));
}

/**
 * Offered on buttons: what was entered last, then what is expected, each species with the pair that
 * it is mistaken for beside it.
 */
export function quickTaxa(
  recent: readonly string[],
  expected: readonly string[],
): readonly ReadTaxon[] {
  const offered = new Map<string, ReadTaxon>();
  for (const taxon of [...recent, ...localTaxa(expected)]) {
    const read = readTaxon(taxon);
    if (!offered.has(read.name)) offered.set(read.name, read);
    const pair = pairOf(taxon);
    if (pair !== null && !offered.has(pair.name)) offered.set(pair.name, pair);
    if (offered.size >= MOST_QUICK) break;
  }
  return [...offered.values()].slice(0, MOST_QUICK);
}
