import type { FieldMark, FieldMarkKey } from '../marks/field-mark-key.js';
import { plumagesOf } from '../marks/field-mark-key.js';
import { FIELD_MARK_KEYS, keysFor, markNamed, stateNamed } from '../marks/field-mark-keys.js';
import { plumagesIn } from '../marks/weigh-marks.js';
import { englishName } from '../taxa/taxon-name.js';
import type { Fault } from './fault.js';
import { nearestOf } from './nearest.js';
import type { RawTable } from './raw.js';
import { RowReader } from './row-reader.js';
import type { NotedMark, Tally, TallyLine } from './snapshot.js';
import { joined, say } from './saying.js';

/**
 * Checks `marks.csv`: field marks noted for tally lines, one state of a mark a row. A mark belongs to
 * the key of some species that its line could be. The values count only if no fault was added; their
 * names are then as the key has them.
 */
export function checkMarks(
  table: RawTable | null,
  tallies: readonly Tally[],
  faults: Fault[],
): readonly NotedMark[] {
  if (table === null) return [];
  const lines = new Map(tallies.flatMap((tally) => tally.lines.map((line) => [line.id, line])));
  const firstRows = new Map<string, number>();
  const marks = table.rows.map(({ row, fields }): NotedMark => {
    const reader = new RowReader(
      table.file,
      (column) => ({ row, cell: fields.get(column) ?? null }),
      faults,
    );
    const id = reader.required('line', say('a tally line id')) ?? '';
    const line = lines.get(id) ?? null;
    // Where the tallies could not be read, nothing can be said about their lines.
    if (id !== '' && line === null && lines.size > 0) {
      const problem = say('no tally line has the id "{id}"', { id });
      reader.fault(
        'line',
        'unknown-id',
        problem,
        say('a tally line id'),
        nearestOf(id, lines.keys()),
      );
    }
    const found = readMark(reader, line);
    const mark = found[0]?.name ?? reader.text('mark') ?? '';
    const state = readState(reader, found, line);
    const key = JSON.stringify([id, mark]);
    const earlier = firstRows.get(key);
    if (earlier === undefined) firstRows.set(key, row);
    else if (id !== '' && mark !== '') {
      const problem = say('row {earlier} has the same mark of {id}', { earlier, id });
      const expected = say(
        'one row for a mark of a line; birds that differ in it go on lines of their own',
      );
      reader.fault('mark', 'duplicate-row', problem, expected);
    }
    return { line: id, mark, state };
  });
  return marksInOrder(marks);
}

/** Marks as a snapshot has them: by line, then mark. */
export function marksInOrder(marks: readonly NotedMark[]): readonly NotedMark[] {
  const key = ({ line, mark }: NotedMark): string => `${line}\n${mark}`;
  return [...marks].sort((one, other) => (key(one) < key(other) ? -1 : 1));
}

/** The marks of this name in the keys that the line may belong to; with a fault where there is none. */
function readMark(reader: RowReader, line: TallyLine | null): readonly FieldMark[] {
  const name = reader.required('mark', say('a mark of a field-mark key'));
  if (name === null) return [];
  const keys = line === null ? FIELD_MARK_KEYS : keysFor(line.candidates);
  if (line !== null && keys.length === 0) {
    reader.fault(
      'mark',
      'no-field-mark-key',
      say('no field-mark key is about {taxon}', { taxon: englishName(line.candidates) }),
      say('marks for lines of {groups}; anything else goes into the note of the line', {
        groups: groupsOf(FIELD_MARK_KEYS),
      }),
    );
    return [];
  }
  const found = marksIn(keys, name);
  if (found.length > 0) return found;
  const elsewhere = FIELD_MARK_KEYS.filter((key) => markNamed(key, name) !== null);
  const known = [...new Set(keys.flatMap((key) => key.marks.map((mark) => mark.name)))];
  const expected =
    keys.length === 1
      ? say('one of {known}', { known: joined(known, '; ') })
      : say('a mark of {groups}', { groups: groupsOf(keys) });
  const nearest = nearestOf(name, known);
  if (line !== null && elsewhere.length > 0) {
    const taxon = englishName(line.candidates);
    const problem = say('"{name}" is a mark of {groups}, and the line is of {taxon}', {
      name,
      groups: groupsOf(elsewhere),
      taxon,
    });
    reader.fault('mark', 'mark-of-another-group', problem, expected, nearest);
  } else {
    reader.fault(
      'mark',
      'unknown-mark',
      say('"{name}" is not a known mark', { name }),
      expected,
      nearest,
    );
  }
  return [];
}

/** The state's name as the key has it, `''` with a fault where it is none of the mark's. */
function readState(reader: RowReader, marks: readonly FieldMark[], line: TallyLine | null): string {
  const text = reader.required('state', say('a state of the mark'));
  if (text === null || marks.length === 0) return text ?? '';
  const found = marks.flatMap((mark) => {
    const state = stateNamed(mark, text);
    return state === null ? [] : [{ mark, state }];
  });
  const [first] = found;
  if (first === undefined) {
    const known = [...new Set(marks.flatMap(({ states }) => states.map(({ name }) => name)))];
    const problem = say('"{text}" is not a state of "{name}"', {
      text,
      name: marks[0]?.name ?? '',
    });
    const expected = say('one of {known}', { known: joined(known, '; ') });
    reader.fault('state', 'unknown-state', problem, expected, nearestOf(text, known));
    return '';
  }
  const plumages = line === null ? [] : plumagesIn(line);
  const isOfOthers = found.every(({ mark, state }) =>
    FIELD_MARK_KEYS.every(({ species }) =>
      species.every((one) => !plumagesOf(mark, state, one).some((each) => plumages.includes(each))),
    ),
  );
  if (line !== null && isOfOthers) {
    const problem = plumages.includes('male')
      ? say('only females show this, and all birds of the line are male')
      : say('only males show this, and all birds of the line are female');
    reader.fault('state', 'contradiction', problem, say('a mark that birds of the line can have'));
  }
  return first.state.name;
}

function marksIn(keys: readonly FieldMarkKey[], name: string): readonly FieldMark[] {
  return keys.flatMap((key) => markNamed(key, name) ?? []);
}

function groupsOf(keys: readonly FieldMarkKey[]): string {
  return keys.map(({ group }) => group).join(', ');
}
