import { checkMarks } from './check-marks.js';
import { checkSamples } from './check-samples.js';
import { checkTallyHead } from './check-tally-head.js';
import { checkTallyLine } from './check-tally-line.js';
import type { Conditions } from './conditions.js';
import type { Fault } from './fault.js';
import type { RawCell, RawTable } from './raw.js';
import { readNewId } from './reading.js';
import { RowReader } from './row-reader.js';
import type { NotedMark, ScanSample, Snapshot, Tally } from './snapshot.js';
import type { TallyColumn } from './tally-columns.js';
import { say } from './saying.js';
import { writeWktPolygon } from './wkt-polygon.js';

/** A tally as a form or program hands it in: fields named as the columns of `tallies.csv`. */
export interface RawTally {
  readonly id: string;
  readonly observer: string;
  readonly sections: readonly string[];
  readonly window: string;
  readonly vantage?: string | null;
  readonly party?: readonly string[] | null;
  readonly start?: string | null;
  readonly end?: string | null;
  readonly scope?: string | null;
  readonly coverage?: number | string | null;
  /** Rings of [lon, lat], as it was drawn. */
  readonly seenArea?: readonly (readonly (readonly number[])[])[] | null;
  readonly conditions?: Readonly<Partial<Record<keyof Conditions, RawCell | undefined>>> | null;
  readonly lines: readonly RawTallyLine[];
  /** Small counts inside its rafts, fields as the columns of `samples.csv`; a raft is a flock label. */
  readonly samples?: readonly RawSample[] | null;
  /** Field marks of its lines, in any order. */
  readonly marks?: readonly RawMark[] | null;
}

export interface RawSample {
  readonly raft: string;
  readonly sample: string;
  readonly taxon: string;
  readonly number: number;
}

export interface RawMark {
  /** Place of the line in the tally, from 1: what faults of the mark name as their row. */
  readonly row: number;
  readonly line: string;
  readonly mark: string;
  readonly state: string;
}

/** A tally, and what was noted with it: its samples name it as their tally. */
export interface CheckedTally {
  readonly tally: Tally;
  readonly samples: readonly ScanSample[];
  readonly marks: readonly NotedMark[];
}

/** One line, its fields as in `tallies.csv`; `line` is its id, by default `tally:n`. */
export type RawTallyLine = Readonly<Partial<Record<TallyColumn, RawCell | undefined>>>;

export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Checks one submitted tally by the same rules and with the same sentences as the rows of
 * `tallies.csv`, `samples.csv` and `marks.csv`. Faults name the file "tally"; their row is the line's
 * place, from 1, and `null` for what the tally says of itself. Those of its samples name the file
 * "samples", and the sample's place.
 */
export function checkTally(
  raw: RawTally,
  count: Pick<Snapshot, 'people' | 'sections' | 'windows' | 'vantages'>,
): Checked<CheckedTally> {
  const faults: Fault[] = [];
  const ids = (nouns: readonly { readonly id: string }[]): string[] => nouns.map(({ id }) => id);
  const known = {
    people: ids(count.people),
    sections: ids(count.sections),
    windows: ids(count.windows),
    vantages: ids(count.vantages),
    waters: new Map(count.sections.map(({ id, polygon }) => [id, polygon])),
  };
  const fields = new Map<string, RawCell>([
    ['tally', raw.id],
    ['observer', raw.observer],
    ['section', raw.sections.join('+')],
    ['window', raw.window],
    ['vantage', raw.vantage ?? null],
    ['party', (raw.party ?? []).join('+')],
    ['start', raw.start ?? null],
    ['end', raw.end ?? null],
    ['scope', raw.scope ?? null],
    ['coverage', raw.coverage ?? null],
    ['seen-area', raw.seenArea ? writeWktPolygon(raw.seenArea) : null],
    ['visibility', raw.conditions?.visibility ?? null],
    ['beaufort', raw.conditions?.beaufort ?? null],
    ['sea-state', raw.conditions?.seaState ?? null],
    ['ice-cover', raw.conditions?.iceCover ?? null],
    ['glare', raw.conditions?.glare ?? null],
    ['disturbance', raw.conditions?.disturbance ?? null],
    ['optics', raw.conditions?.optics ?? null],
  ]);
  const reader = new RowReader(
    'tally',
    (column) => ({ row: null, cell: fields.get(column) ?? null }),
    faults,
  );
  reader.required('tally', say('an id made by whoever submits'));
  reader.read('tally', readNewId);
  const head = checkTallyHead(reader, known);
  const firstRow = new Map<string, number>();
  const lines = raw.lines.map((line, index) => {
    const row = index + 1;
    const lineReader = new RowReader(
      'tally',
      (column) => ({ row, cell: line[column as TallyColumn] ?? null }),
      faults,
    );
    const checked = checkTallyLine(lineReader, known, `${raw.id}:${row}`);
    const earlier = firstRow.get(checked.id);
    if (earlier !== undefined) {
      const problem = say('"{id}" is the id of row {earlier} too', { id: checked.id, earlier });
      lineReader.fault('line', 'duplicate-id', problem, say('an id that no other line has'));
    }
    firstRow.set(checked.id, earlier ?? row);
    return checked;
  });
  const sorted = [...lines].sort((a, b) => (a.id < b.id ? -1 : 1));
  const tally = { id: raw.id.trim(), ...head, lines: sorted };
  const samples = checkSamples(samplesTable(raw.samples ?? [], tally), [tally], faults);
  const marks = checkMarks(marksTable(raw.marks ?? []), [tally], faults);
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { tally, samples, marks } };
}

function samplesTable(samples: readonly RawSample[], tally: Tally): RawTable {
  const rows = samples.map((sample, index) => ({
    row: index + 1,
    fields: new Map<string, RawCell>([...Object.entries(sample), ['tally', tally.id]]),
  }));
  return { file: 'samples', columns: ['raft', 'tally', 'sample', 'taxon', 'number'], rows };
}

function marksTable(marks: readonly RawMark[]): RawTable {
  const rows = marks.map(({ row, ...fields }) => ({
    row,
    fields: new Map(Object.entries(fields)),
  }));
  return { file: 'tally', columns: ['line', 'mark', 'state'], rows };
}
