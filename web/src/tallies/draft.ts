import { v7 } from 'uuid';
import type {
  Activity,
  Certainty,
  Method,
  Position,
  TotalMethod,
} from '../../../server/core/model/snapshot.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import type { DraftRaft } from './raft.js';

/**
 * A tally while it is being written: every field as the observer typed it, so that nothing is lost
 * or tidied away under their fingers. Plain values, kept as JSON on the phone.
 */
export interface Draft {
  /** UUIDv7, made once: the server takes the same id with the same content once only. */
  readonly id: string;
  readonly assignmentId: string;
  readonly countId: string;
  /** Clock times at the waterbody, `08:15`. */
  readonly start: string;
  readonly end: string;
  readonly scope: 'all-waterbirds' | 'waterfowl' | 'taxa';
  /** For scope `taxa`: names as they are written in tallies. */
  readonly scopeTaxa: readonly string[];
  readonly seenAll: boolean;
  /** Share of the section that was seen, in per cent, if not all. */
  readonly seenPercent: string;
  /** Corners of what was seen, as drawn on the map of the section; empty where nothing is drawn. */
  readonly seenArea: readonly Position[];
  readonly conditions: DraftConditions;
  /** Ids of others who contributed. */
  readonly party: readonly string[];
  readonly lines: readonly DraftLine[];
  /** Mixed rafts that were scanned; their birds are lines as well, by the flock label. */
  readonly rafts: readonly DraftRaft[];
  /** The submitted tally that this one corrects. */
  readonly replaces: string | null;
  readonly reason: string;
}

/** Light, weather and water while counting, each empty where it was not noted. */
export interface DraftConditions {
  readonly visibility: string;
  /** Beaufort force, 0 to 12. */
  readonly beaufort: string;
  /** State of the sea, 0 to 9 (WMO code table 3700). */
  readonly seaState: string;
  /** Share of the section under ice, in per cent. */
  readonly iceCover: string;
  readonly glare: string;
  readonly disturbance: string;
  readonly optics: string;
}

export type QuantityKind = 'number' | 'range' | 'present';

export interface DraftLine {
  readonly id: string;
  /** A name that `parseTaxon` reads. */
  readonly taxon: string;
  readonly quantity: QuantityKind;
  readonly number: string;
  readonly low: string;
  readonly high: string;
  readonly method: Method;
  /** For method `sample`: how the birds of the whole raft were counted; empty where it was not said. */
  readonly totalMethod: TotalMethod | '';
  readonly block: string;
  readonly activity: Activity;
  readonly male: string;
  readonly female: string;
  readonly adult: string;
  readonly immature: string;
  readonly flock: string;
  readonly time: string;
  readonly heading: string;
  readonly from: string;
  readonly to: string;
  readonly certainty: Certainty;
  readonly note: string;
  /** Where the flock was, in decimal degrees (WGS 84). */
  readonly lon: string;
  readonly lat: string;
  /** Field marks seen on its birds, by the names of the key. */
  readonly marks: readonly DraftMark[];
  /** The observer was asked about marks that leave more, or other, species, and answered. */
  readonly marksAnswered: boolean;
}

export interface DraftMark {
  readonly mark: string;
  readonly state: string;
}

export const noConditions: DraftConditions = {
  visibility: '',
  beaufort: '',
  seaState: '',
  iceCover: '',
  glare: '',
  disturbance: '',
  optics: '',
};

export function emptyDraft(countId: string, assignmentId: string): Draft {
  return {
    id: v7(),
    assignmentId,
    countId,
    start: '',
    end: '',
    scope: 'all-waterbirds',
    scopeTaxa: [],
    seenAll: true,
    seenPercent: '',
    seenArea: [],
    conditions: noConditions,
    party: [],
    lines: [],
    rafts: [],
    replaces: null,
    reason: '',
  };
}

/** A new line; method and activity go on as in the line before it, since flocks come in series. */
export function emptyLine(taxon: string, before?: DraftLine): DraftLine {
  return {
    id: v7(),
    taxon,
    quantity: 'number',
    number: '',
    low: '',
    high: '',
    // A scanned raft says nothing of how the next flock is counted.
    method: before === undefined || before.method === 'sample' ? 'one-by-one' : before.method,
    totalMethod: '',
    block: before?.method === 'sample' ? '' : (before?.block ?? ''),
    activity: before?.activity === 'flying-through' ? 'water' : (before?.activity ?? 'water'),
    male: '',
    female: '',
    adult: '',
    immature: '',
    flock: '',
    time: '',
    heading: '',
    from: '',
    to: '',
    certainty: 'sure',
    note: '',
    lon: '',
    lat: '',
    marks: [],
    marksAnswered: false,
  };
}

/** Puts a line in: over the one with its id, else at the end. */
export function withLine(draft: Draft, line: DraftLine): Draft {
  const known = draft.lines.some(({ id }) => id === line.id);
  return {
    ...draft,
    lines: known
      ? draft.lines.map((one) => (one.id === line.id ? line : one))
      : [...draft.lines, line],
  };
}

export function withoutLine(draft: Draft, lineId: string): Draft {
  return { ...draft, lines: draft.lines.filter(({ id }) => id !== lineId) };
}

/** `1,200` and ` 12 ` as whole birds; `null` for what is not a whole number of birds. */
export function wholeNumber(text: string): number | null {
  const plain = text.trim().replace(/[,\u00a0\u202f ](?=\d{3}\b)/gu, '');
  if (!/^\d{1,7}$/u.test(plain)) return null;
  return Number(plain);
}

/** Birds on the water or land and birds flying through so far; what is not yet a number adds nothing. */
export function runningTotal(draft: Draft): {
  readonly using: number;
  readonly flyingThrough: number;
} {
  let using = 0;
  let flyingThrough = 0;
  for (const line of draft.lines) {
    const count = bestNumber(line);
    if (line.activity === 'flying-through') flyingThrough += count;
    else using += count;
  }
  return { using, flyingThrough };
}

/** Lines are never changed in place: each is read once, not with every tap on another. */
const numbers = new WeakMap<DraftLine, number>();

function bestNumber(line: DraftLine): number {
  const known = numbers.get(line);
  if (known !== undefined) return known;
  const number = readNumber(line);
  numbers.set(line, number);
  return number;
}

/** The line's single number: as typed, or the rounded middle of its range; "present" counts as none. */
function readNumber(line: DraftLine): number {
  if (line.quantity === 'present') return 0;
  if (line.quantity === 'number') return wholeNumber(line.number) ?? 0;
  const low = wholeNumber(line.low);
  const high = wholeNumber(line.high);
  return low === null || high === null ? 0 : Math.round((low + high) / 2);
}

/** The same taxon twice with the same activity, flock and time may be a slip: worth a question. */
export function repeatedTaxa(draft: Draft): readonly string[] {
  const seen = new Set<string>();
  const repeated = new Set<string>();
  for (const line of draft.lines) {
    const parsed = parseTaxon(line.taxon);
    const name = parsed.ok ? parsed.candidates.join('/') : line.taxon;
    const key = JSON.stringify([name, line.activity, line.flock, line.time]);
    if (seen.has(key)) repeated.add(line.taxon);
    seen.add(key);
  }
  return [...repeated].sort();
}
