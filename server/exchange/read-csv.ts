import { CsvError, parse } from 'csv-parse/sync';
import type { Fault } from '../core/model/fault.js';
import type { RawCell, RawTable } from '../core/model/raw.js';
import { decodeText } from './decode-text.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';
import { tableOf } from './table-of.js';
import { say } from '../core/model/saying.js';

/**
 * Reads a CSV file (RFC 4180) with a header row. A byte-order mark, CRLF and quoted fields are
 * understood, and the semicolons or tabs that spreadsheets write where the comma is decimal.
 * `null` if it cannot be taken apart; then a fault says where.
 */
export function readCsv(file: FolderFile, faults: Fault[]): RawTable | null {
  const text = decodeText(file, faults);
  if (text === null) return null;
  try {
    const records = parse(text, {
      delimiter: delimiterOf(text),
      record_delimiter: ['\r\n', '\n', '\r'],
      relax_column_count: true,
    });
    return tableOf(file.name, records satisfies readonly (readonly RawCell[])[], faults);
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = error['lines'];
    faults.push(
      fileFault(
        file.name,
        'bad-csv',
        typeof line === 'number'
          ? say('a quotation mark is out of place near line {line} of the file', {
              line: String(line),
            })
          : say('a quotation mark is out of place of the file'),
        say(
          'fields with quotation marks, commas or line breaks in "quotes", and a quotation mark inside them doubled',
        ),
      ),
    );
    return null;
  }
}

/** The header has no text in it, so what separates its names separates all fields. */
function delimiterOf(text: string): string {
  const header = text.split(/[\r\n]/u, 1)[0] ?? '';
  return [',', ';', '\t'].find((mark) => header.includes(mark)) ?? ',';
}
