import { checkTallyHead } from './check-tally-head.js';
import { checkTallyLine } from './check-tally-line.js';
import type { Fault } from './fault.js';
import type { RawCell } from './raw.js';
import { readNewId } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Snapshot, Tally } from './snapshot.js';
import type { TallyColumn } from './tally-columns.js';

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
  readonly lines: readonly RawTallyLine[];
}

/** One line, its fields as in `tallies.csv`; `line` is its id, by default `tally:n`. */
export type RawTallyLine = Readonly<Partial<Record<TallyColumn, RawCell | undefined>>>;

export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Checks one submitted tally by the same rules and with the same sentences as a row of
 * `tallies.csv`. Faults name the file "tally"; their row is the line's place, from 1, and `null`
 * for what the tally says of itself.
 */
export function checkTally(
  raw: RawTally,
  count: Pick<Snapshot, 'people' | 'sections' | 'windows' | 'vantages'>,
): Checked<Tally> {
  const faults: Fault[] = [];
  const ids = (nouns: readonly { readonly id: string }[]): string[] => nouns.map(({ id }) => id);
  const known = {
    people: ids(count.people),
    sections: ids(count.sections),
    windows: ids(count.windows),
    vantages: ids(count.vantages),
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
  ]);
  const reader = new RowReader(
    'tally',
    (column) => ({ row: null, cell: fields.get(column) ?? null }),
    faults,
  );
  reader.required('tally', 'an id made by whoever submits');
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
      const problem = `"${checked.id}" is the id of row ${earlier} too`;
      lineReader.fault('line', 'duplicate-id', problem, 'an id that no other line has');
    }
    firstRow.set(checked.id, earlier ?? row);
    return checked;
  });
  if (faults.length > 0) return { ok: false, faults };
  const sorted = lines.sort((a, b) => (a.id < b.id ? -1 : 1));
  return { ok: true, value: { id: raw.id.trim(), ...head, lines: sorted } };
}
