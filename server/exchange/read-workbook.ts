import { Buffer } from 'node:buffer';
import readXlsxFile from 'read-excel-file/node';
import type { Fault } from '../core/model/fault.js';
import type { RawCell, RawTable } from '../core/model/raw.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';
import { tableOf } from './table-of.js';
import { say } from '../core/model/saying.js';

/**
 * Reads the sheet "tallies" of a spreadsheet, or its first sheet: the same columns as the CSV file.
 * A cell formatted as a date has no offset from UTC and will be refused as such.
 */
export async function readWorkbook(file: FolderFile, faults: Fault[]): Promise<RawTable | null> {
  if (typeof file.content === 'string') {
    faults.push(unreadable(file.name));
    return null;
  }
  let sheets;
  try {
    sheets = await readXlsxFile(Buffer.from(file.content));
  } catch {
    faults.push(unreadable(file.name));
    return null;
  }
  const sheet = sheets.find(({ sheet: name }) => name.toLowerCase() === 'tallies') ?? sheets[0];
  if (sheet === undefined) {
    faults.push(
      fileFault(
        file.name,
        'no-header',
        say('the spreadsheet has no sheet'),
        say('a sheet "tallies"'),
      ),
    );
    return null;
  }
  return tableOf(file.name, squared(sheet.data.map((row) => row.map(cellOf))), faults);
}

function unreadable(file: string): Fault {
  const expected = say('a spreadsheet saved as .xlsx, or tallies.csv instead');
  return fileFault(
    file,
    'bad-workbook',
    say('the file is not a readable .xlsx spreadsheet'),
    expected,
  );
}

function cellOf(cell: unknown): RawCell {
  // Dates come at UTC midnight or time, without any offset having been said.
  if (cell instanceof Date) return cell.toISOString().replace(/\.\d+Z$/u, '');
  if (typeof cell === 'string' || typeof cell === 'number' || typeof cell === 'boolean')
    return cell;
  return null;
}

/** Sheets leave out empty cells at the end of a row. */
function squared(rows: readonly (readonly RawCell[])[]): readonly (readonly RawCell[])[] {
  const width = Math.max(0, ...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]);
}
