import { parseTaxon } from '../taxa/parse-taxon.js';
import { checkConditions } from './check-conditions.js';
import { checkSeenArea } from './check-seen-area.js';
import type { KnownIds } from './raw.js';
import type { RowReader } from './row-reader.js';
import { nearestOf } from './nearest.js';
import type { Scope, Species, Tally } from './snapshot.js';
import { instant } from './time.js';
import { say } from './saying.js';

/** What a tally says of itself, apart from its id and lines. */
export type TallyHead = Omit<Tally, 'id' | 'lines'>;

/** Checks the fields that all rows of a tally share. The value counts only if no fault was added. */
export function checkTallyHead(reader: RowReader, known: KnownIds): TallyHead {
  reader.required('observer', say('the id of a person of this count'));
  const observer = reader.knownId('observer', known.people, say('person')) ?? '';
  reader.required('section', say('the id of a section, or several joined by +'));
  const sections = reader.knownIds('section', known.sections, say('section'));
  reader.required('window', say('the id of a window'));
  const window = reader.knownId('window', known.windows, say('window')) ?? '';
  const vantage = reader.knownId('vantage', known.vantages, say('vantage point'));
  const start = reader.instant('start');
  const end = reader.instant('end');
  checkSpan(reader, start, end);
  const coverage = reader.decimal(
    'coverage',
    { over: 0, to: 1 },
    say('the share of the section that was seen, over 0 and up to 1'),
  );
  const seenArea = checkSeenArea(reader, sections, known);
  const conditions = checkConditions(reader);
  const party = reader.knownIds('party', known.people, say('person'));
  return {
    observer,
    party: [...new Set([...party, observer])].sort(),
    sections,
    window,
    vantage,
    start,
    end,
    scope: checkScope(reader),
    coverage: coverage ?? 1,
    ...(seenArea !== null && { seenArea }),
    ...(conditions !== null && { conditions }),
  };
}

function checkSpan(reader: RowReader, start: string | null, end: string | null): void {
  if (start === null || end === null) return;
  if ((instant(end) ?? 0) >= (instant(start) ?? 0)) return;
  reader.fault(
    'end',
    'ends-before-start',
    say('the tally ends at {end}, before it starts at {start}', { end, start }),
    say('an end that is not before the start'),
  );
}

/** A word, or taxa separated by comma, semicolon or +. Nothing said = every waterbird. */
function checkScope(reader: RowReader): Scope {
  const text = reader.text('scope');
  if (text === null || text === 'all-waterbirds') return { kind: 'all-waterbirds' };
  if (text === 'waterfowl') return { kind: 'waterfowl' };
  const species = new Set<Species>();
  let allKnown = true;
  for (const part of text.split(/[,;+]/u)) {
    if (part.trim() === '') continue;
    const parsed = parseTaxon(part);
    if (parsed.ok) {
      for (const name of parsed.candidates) species.add(name);
    } else {
      allKnown = false;
      reader.fault(
        'scope',
        'unknown-scope',
        say('{problem}, nor a scope', { problem: parsed.problem }),
        say('all-waterbirds, waterfowl, or a list of taxa separated by commas'),
        nearestOf(part, ['all-waterbirds', 'waterfowl']) ?? parsed.nearest,
      );
    }
  }
  if (species.size === 0 && allKnown) {
    reader.fault(
      'scope',
      'unknown-scope',
      say('the scope names no taxon'),
      say('at least one taxon'),
    );
  }
  return { kind: 'taxa', species: [...species].sort() };
}
