import type { Fault } from '../core/model/fault.js';
import type { RawCell, RawRow, RawTable } from '../core/model/raw.js';
import { fileFault } from './file-fault.js';
import { say } from '../core/model/saying.js';

const isEmpty = (cell: RawCell | undefined): boolean =>
  cell === undefined || cell === null || (typeof cell === 'string' && cell.trim() === '');

/**
 * The rows under a header row, each with its number as a spreadsheet shows it. Empty rows are
 * passed over but counted; a row with more or fewer fields than the header is a fault, since
 * its values may stand under the wrong names.
 */
export function tableOf(
  file: string,
  records: readonly (readonly RawCell[])[],
  faults: Fault[],
): RawTable | null {
  const header = records[0];
  if (header === undefined || header.every(isEmpty)) {
    faults.push(
      fileFault(file, 'no-header', say('the first row is empty'), say('a header row'), 1),
    );
    return null;
  }
  const names = header.map((cell) => (isEmpty(cell) ? '' : String(cell).trim().toLowerCase()));
  const rows: RawRow[] = [];
  for (const [index, record] of records.entries()) {
    if (index === 0 || record.every(isEmpty)) continue;
    const row = index + 1;
    const unnamed = record.findIndex((cell, at) => (names[at] ?? '') === '' && !isEmpty(cell));
    if (record.length < names.length) {
      const problem = say('the row has {fields} fields, the header has {header}', {
        fields: record.length,
        header: names.length,
      });
      const expected = say('{header} fields; an empty one still needs its separator', {
        header: names.length,
      });
      faults.push(fileFault(file, 'field-count', problem, expected, row));
    } else if (unnamed >= 0) {
      const problem = say('field {unnamed} holds "{record}" but has no column name', {
        unnamed: unnamed + 1,
        record: String(record[unnamed]),
      });
      const expected = say('a name in the header for every column that is used');
      faults.push(fileFault(file, 'field-count', problem, expected, row));
    } else {
      // The first of two columns with one name; the header's own fault says that there are two.
      const fields = new Map<string, RawCell>();
      for (const [at, name] of names.entries()) {
        if (name !== '' && !fields.has(name)) fields.set(name, record[at] ?? null);
      }
      rows.push({ row, fields });
    }
  }
  return { file, columns: names.filter((name) => name !== ''), rows };
}
