import type { Fault } from '../core/model/fault.js';
import type { RawCount, RawTable } from '../core/model/raw.js';
import { nearestOf } from '../core/model/nearest.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';
import { readCsv } from './read-csv.js';
import { joined, say } from '../core/model/saying.js';

/** Columns that the optional files must have. */
const COLUMNS: ReadonlyMap<string, readonly string[]> = new Map([
  ['samples.csv', ['raft', 'sample', 'taxon', 'number']],
  ['marks.csv', ['line', 'mark', 'state']],
  ['links.csv', ['line_a', 'line_b', 'same']],
  ['history.csv', ['taxon', 'year', 'number']],
]);

/**
 * Reads the files that a folder need not have and holds their columns against the format. A file
 * that lacks a column is not read further. Known links (`links.csv`) are meant for training and
 * truth.
 *
 * @returns the tables that reconciling uses
 */
export function readOptionalFiles(
  files: ReadonlyMap<string, FolderFile>,
  faults: Fault[],
): Pick<RawCount, 'history' | 'samples' | 'marks'> {
  const read = new Map<string, RawTable>();
  for (const [name, columns] of COLUMNS) {
    const file = files.get(name);
    if (file === undefined) continue;
    const table = readCsv(file, faults);
    if (table === null) continue;
    const missing = columns.filter((wanted) => !table.columns.includes(wanted));
    if (missing.length === 0) read.set(name, table);
    for (const column of missing) {
      faults.push({
        ...fileFault(
          name,
          'missing-column',
          say('the column is missing'),
          say('columns {columns}', { columns: joined(columns, ', ') }),
          1,
        ),
        column,
        nearest: nearestOf(
          column,
          table.columns.filter((present) => !columns.includes(present)),
        ),
      });
    }
  }
  return {
    history: read.get('history.csv') ?? null,
    samples: read.get('samples.csv') ?? null,
    marks: read.get('marks.csv') ?? null,
  };
}
