import type { Checked } from '../model/check-tally.js';
import type { Fault } from '../model/fault.js';
import { KeyReader } from '../model/key-reader.js';
import type { RawDocument } from '../model/raw.js';
import { readKnownId } from '../model/reading.js';
import type { Snapshot } from '../model/snapshot.js';
import { leafOf } from '../taxa/leaf.js';
import {
  PLANTED_KINDS,
  type Birds,
  type Planted,
  type TrueFlock,
  type TrueLink,
  type Truth,
} from './truth.js';
import { type Saying, say } from '../model/saying.js';

const KEYS = [
  'total',
  'sections',
  'flyingThrough',
  'toBeSeen',
  'found',
  'planted',
  'links',
  'flocks',
];
/** How a simulated count was made: for people, not read. */
const ALSO = ['simulation'];

/**
 * Checks `truth.json` against its count: every fault at once. `toBeSeen`, `found`, `planted` and
 * `flocks` may be left out, where nobody knows.
 */
export function checkTruth(document: RawDocument, snapshot: Snapshot): Checked<Truth> {
  const faults: Fault[] = [];
  const outer = new KeyReader(document.file, '', { truth: document.value }, faults);
  const reader = outer.child('truth', say('an object with total, sections and links'));
  if (reader === null) return { ok: false, faults };
  reader.unknownKeys([...KEYS, ...ALSO], null);
  const sections = snapshot.sections.map(({ id }) => id);
  const tallies = snapshot.tallies.map(({ id }) => id);
  const lines = snapshot.tallies.flatMap((tally) => tally.lines.map(({ id }) => id));
  const truth: Truth = {
    total: checkBirds(reader, 'total') ?? {},
    sections: checkPlaces(reader, 'sections', sections, say('section'), true) ?? {},
    flyingThrough: checkPlaces(reader, 'flyingThrough', sections, say('section'), false) ?? {},
    toBeSeen: checkPlaces(reader, 'toBeSeen', sections, say('section'), false),
    found: checkPlaces(reader, 'found', tallies, say('tally'), false),
    planted: checkAllPlanted(reader, snapshot, lines),
    links: checkLinks(reader, lines),
    flocks: checkFlocks(reader, lines),
  };
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: truth };
}

function checkBirds(reader: KeyReader, key: string): Birds | null {
  const birds = reader.child(key, say('whole birds by scientific name'));
  if (birds === null) return null;
  const entries = birds.keys().map((species) => {
    if (leafOf(species) === null) {
      const problem = say('{species} is not a known species', { species });
      birds.fault(species, 'unknown-taxon', problem, say('the scientific name of a species'));
    }
    return [species, birds.whole(species, say('whole birds, 0 or more')) ?? 0] as const;
  });
  return Object.fromEntries(entries.sort(([one], [other]) => (one < other ? -1 : 1)));
}

function checkPlaces(
  reader: KeyReader,
  key: string,
  known: readonly string[],
  what: Saying,
  needed: boolean,
): Readonly<Record<string, Birds>> | null {
  const places = reader.child(
    key,
    say('whole birds by {what} and scientific name', { what }),
    needed,
  );
  if (places === null) return null;
  const entries = places.keys().map((place) => {
    if (!known.includes(place)) {
      places.fault(
        place,
        'unknown-id',
        say('{place} is no {what} of this count', { place, what }),
        say('a {what} id', { what }),
      );
    }
    return [place, checkBirds(places, place) ?? {}] as const;
  });
  return Object.fromEntries(entries.sort(([one], [other]) => (one < other ? -1 : 1)));
}

function checkAllPlanted(
  reader: KeyReader,
  { people, sections }: Snapshot,
  lines: readonly string[],
): readonly Planted[] | null {
  const entries = reader.objects('planted', say('a list of known errors'), false);
  if (entries === null) return null;
  const [persons, places] = [people.map(({ id }) => id), sections.map(({ id }) => id)];
  const idOf = (entry: KeyReader, key: string, known: readonly string[], what: Saying): string =>
    entry.read(key, say('a {what} id', { what }), (text) => readKnownId(text, known, what)) ?? '';
  return entries.map((entry): Planted => {
    const birds = entry.whole('birds', say('whole birds')) ?? 0;
    const against = checkLineIds(entry, 'against', lines);
    // Written by hand, an error that lines speak against is contradicted as a whole.
    const contradicted = entry.whole('contradicted', say('whole birds'), false);
    return {
      kind: entry.word('kind', PLANTED_KINDS, say('kind of error')) ?? 'slip',
      observer: idOf(entry, 'observer', persons, say('person')),
      section: idOf(entry, 'section', places, say('section')),
      species: entry.text('species', say('the scientific name of a species')) ?? '',
      birds,
      lines: checkLineIds(entry, 'lines', lines),
      against,
      contradicted: contradicted ?? (against.length > 0 ? birds : 0),
    };
  });
}

function checkLinks(reader: KeyReader, lines: readonly string[]): readonly TrueLink[] {
  const entries = reader.objects('links', say('a list of links')) ?? [];
  return entries.map((entry) => {
    const ids = checkLineIds(entry, 'lines', lines);
    const [one = '', other = ''] = ids;
    if (ids.length !== 2) {
      entry.fault(
        'lines',
        'wrong-type',
        say('it names {number} lines', { number: ids.length }),
        say('two tally lines'),
      );
    }
    return {
      kind: entry.word('kind', ['overlap', 'movement'], say('kind of link')) ?? 'overlap',
      lines: [one, other],
    };
  });
}

function checkFlocks(reader: KeyReader, known: readonly string[]): readonly TrueFlock[] | null {
  const entries = reader.objects('flocks', say('a list of true flocks'), false);
  if (entries === null) return null;
  return entries.map((entry): TrueFlock => {
    const parts = entry.objects('parts', say('a list of species with birds and lines')) ?? [];
    return {
      inSight: entry.flag('inSight', say('true or false')) ?? false,
      parts: parts.map((part) => ({
        species: part.text('species', say('the scientific name of a species')) ?? '',
        birds: part.whole('birds', say('whole birds')) ?? 0,
        lines: checkLineIds(part, 'lines', known),
      })),
    };
  });
}

function checkLineIds(entry: KeyReader, key: string, known: readonly string[]): readonly string[] {
  const list = entry.list(key, say('a list of tally line ids')) ?? [];
  return list.map((id) => {
    if (typeof id !== 'string' || !known.includes(id)) {
      const problem = say('{id} is no tally line of this count', { id: String(id) });
      entry.fault(key, 'unknown-id', problem, say('ids of tally lines'));
    }
    return String(id);
  });
}
