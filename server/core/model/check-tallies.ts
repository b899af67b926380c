import { checkTallyHead, type TallyHead } from './check-tally-head.js';
import { checkTallyLine } from './check-tally-line.js';
import type { Fault } from './fault.js';
import { nearestOf } from './nearest.js';
import type { KnownIds, RawRow, RawTable } from './raw.js';
import { readNewId } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Tally, TallyLine } from './snapshot.js';
import { HEAD_COLUMNS, REQUIRED_COLUMNS, TALLY_COLUMNS } from './tally-columns.js';
import { say, type Saying } from './saying.js';

export interface CheckedTallies {
  /** Sorted by id. */
  readonly tallies: readonly Tally[];
  /** The row in which each tally begins. */
  readonly firstRows: ReadonlyMap<string, number>;
}

/** Checks the table of all tally lines. The values count only if no fault was added. */
export function checkTallies(
  table: RawTable,
  known: KnownIds,
  faults: Fault[],
  notes: string[],
): CheckedTallies {
  if (!checkColumns(table, faults, notes)) return { tallies: [], firstRows: new Map() };
  const byTally = new Map<string, RawRow[]>();
  for (const row of table.rows) {
    const reader = readerOf(table, row, faults);
    reader.required('tally', say('the id of the tally that the row belongs to'));
    reader.read('tally', readNewId);
    const id = reader.text('tally') ?? '';
    const rows = byTally.get(id);
    if (rows === undefined) byTally.set(id, [row]);
    else rows.push(row);
  }
  const checked = [...byTally].map(([id, rows]) => checkOneTally(id, rows, table, known, faults));
  checkLineIds(table, checked, faults);
  const tallies = checked
    .map(({ id, head, lines }) => ({
      id,
      ...head,
      lines: lines.map(({ line }) => line).sort((a, b) => (a.id < b.id ? -1 : 1)),
    }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  const firstRows = new Map([...byTally].map(([id, rows]) => [id, rows[0]?.row ?? 1]));
  return { tallies, firstRows };
}

function readerOf(table: RawTable, row: RawRow, faults: Fault[]): RowReader {
  return new RowReader(
    table.file,
    (column) => ({ row: row.row, cell: row.fields.get(column) ?? null }),
    faults,
  );
}

/** False if a required column is missing: then the rows would only repeat that. */
function checkColumns(table: RawTable, faults: Fault[], notes: string[]): boolean {
  const missing = REQUIRED_COLUMNS.filter((column) => !table.columns.includes(column));
  const absent = TALLY_COLUMNS.filter((column) => !table.columns.includes(column));
  const headerFault = (code: string, column: string, problem: Saying, expected: Saying) =>
    faults.push({
      code,
      file: table.file,
      row: 1,
      column,
      value: code === 'missing-column' ? null : column,
      problem,
      expected,
      nearest: code === 'unknown-column' ? nearestOf(column, absent) : null,
    });
  for (const column of missing) {
    const required = REQUIRED_COLUMNS.join(', ');
    headerFault(
      'missing-column',
      column,
      say('the column is missing'),
      say('the columns {required}', { required }),
    );
  }
  for (const [index, column] of table.columns.entries()) {
    if (table.columns.indexOf(column) < index) {
      headerFault(
        'duplicate-column',
        column,
        say('the column is there twice'),
        say('each column once'),
      );
    } else if ((TALLY_COLUMNS as readonly string[]).includes(column)) {
      continue;
    } else if (nearestOf(column, absent) === null) {
      notes.push(`${table.file}: column ${column} is not one that is read; it was passed over.`);
    } else {
      const expected = say('a known column, or a name that cannot be mistaken for one');
      headerFault(
        'unknown-column',
        column,
        say('"{column}" is not a known column', { column }),
        expected,
      );
    }
  }
  return missing.length === 0;
}

interface CheckedTally {
  readonly id: string;
  readonly head: TallyHead;
  readonly lines: readonly { readonly row: number; readonly line: TallyLine }[];
}

function checkOneTally(
  id: string,
  rows: readonly RawRow[],
  table: RawTable,
  known: KnownIds,
  faults: Fault[],
): CheckedTally {
  const head = checkSharedFields(id, rows, table, known, faults);
  const only = rows.length === 1 ? rows[0] : undefined;
  if (only !== undefined && sawNothing(readerOf(table, only, []))) return { id, head, lines: [] };
  const lines = rows.map((row, index) => ({
    row: row.row,
    line: checkTallyLine(readerOf(table, row, faults), known, `${id}:${index + 1}`),
  }));
  return { id, head, lines };
}

/** A tally without any bird is written as one row: no taxon, number 0. */
function sawNothing(reader: RowReader): boolean {
  return reader.text('taxon') === null && reader.text('number') === '0';
}

/**
 * Reads what all rows of a tally say alike. Where they differ, what most rows say is taken for
 * meant, and the others are named, so that one slip is one fault.
 */
function checkSharedFields(
  id: string,
  rows: readonly RawRow[],
  table: RawTable,
  known: KnownIds,
  faults: Fault[],
): TallyHead {
  const text = (row: RawRow, column: string): string => readerOf(table, row, []).text(column) ?? '';
  const meant = new Map(HEAD_COLUMNS.map((column) => [column, mostCommon(rows, column, text)]));
  const found: Fault[] = [];
  const reader = new RowReader(
    table.file,
    (column) => {
      const row = meant.get(column as (typeof HEAD_COLUMNS)[number]);
      return row === undefined ? null : { row: row.row, cell: row.fields.get(column) ?? null };
    },
    found,
  );
  const head = checkTallyHead(reader, known);
  for (const fault of found) {
    const alike = rows.filter((row) => text(row, fault.column ?? '') === (fault.value ?? ''));
    const more = alike.length - 1;
    if (more === 0) {
      faults.push(fault);
      continue;
    }
    const { problem } = fault;
    faults.push({
      ...fault,
      problem:
        more === 1
          ? say('{problem}, here and in 1 more row of tally {id}', { problem, id })
          : say('{problem}, here and in {more} more rows of tally {id}', { problem, more, id }),
    });
  }
  for (const column of HEAD_COLUMNS) {
    const reference = meant.get(column);
    if (reference === undefined) continue;
    const usual = text(reference, column);
    for (const each of rows) {
      const written = text(each, column);
      if (written === usual) continue;
      const own: Fault[] = [];
      checkTallyHead(readerOf(table, each, own), known);
      const wrongByItself = own.filter((fault) => fault.column === column && written !== '');
      if (wrongByItself.length > 0) {
        faults.push(...wrongByItself);
        continue;
      }
      const row = String(reference.row);
      const places = { written, usual, row, id };
      readerOf(table, each, faults).fault(
        column,
        'rows-disagree',
        written === ''
          ? say('nothing stands here, but "{usual}" in row {row} of the same tally {id}', places)
          : usual === ''
            ? say(
                '"{written}" stands here, but nothing in row {row} of the same tally {id}',
                places,
              )
            : say(
                '"{written}" stands here, but "{usual}" in row {row} of the same tally {id}',
                places,
              ),
        say('the same {column} in all rows of a tally', { column }),
      );
    }
  }
  return head;
}

/** The first of the rows that say what most rows say. */
function mostCommon(
  rows: readonly RawRow[],
  column: string,
  text: (row: RawRow, column: string) => string,
): RawRow | undefined {
  const firsts = new Map<string, { readonly row: RawRow; times: number }>();
  for (const row of rows) {
    const entry = firsts.get(text(row, column));
    if (entry === undefined) firsts.set(text(row, column), { row, times: 1 });
    else entry.times += 1;
  }
  let best: { readonly row: RawRow; times: number } | undefined;
  for (const entry of firsts.values()) if (entry.times > (best?.times ?? 0)) best = entry;
  return best?.row;
}

function checkLineIds(table: RawTable, tallies: readonly CheckedTally[], faults: Fault[]): void {
  const all = tallies.flatMap(({ lines }) => lines).sort((a, b) => a.row - b.row);
  const firstRow = new Map<string, number>();
  for (const { row, line } of all) {
    const earlier = firstRow.get(line.id);
    if (earlier === undefined) {
      firstRow.set(line.id, row);
      continue;
    }
    faults.push({
      code: 'duplicate-id',
      file: table.file,
      row,
      column: 'line',
      value: line.id,
      problem: say('"{id}" is the id of row {earlier} too', { id: line.id, earlier }),
      expected: say('an id that no other line of the count has'),
      nearest: null,
    });
  }
}
