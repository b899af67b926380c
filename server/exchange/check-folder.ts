import { checkCount, type CheckedCount } from '../core/model/check-count.js';
import type { Fault } from '../core/model/fault.js';
import type { RawDocument, RawTable } from '../core/model/raw.js';
import { fileFault } from './file-fault.js';
import { FOLDER_FILES, type FolderFile, type FolderFileName } from './folder-files.js';
import { readOptionalFiles } from './optional-files.js';
import { readCsv } from './read-csv.js';
import { readJson } from './read-json.js';
import { readWorkbook } from './read-workbook.js';
import { say } from '../core/model/saying.js';

/**
 * Checks the files of a count folder: the whole count, or every fault of every file at once.
 *
 * @param content `plan` for a count that has no tallies yet, as a leader plans it.
 */
export async function checkFolder(
  files: readonly FolderFile[],
  content: 'count' | 'plan' = 'count',
): Promise<CheckedCount> {
  const faults: Fault[] = [];
  const byName = filesByName(files, faults);
  const count = document('count.json', byName, faults);
  const places = document('places.geojson', byName, faults);
  const tallies = content === 'plan' ? null : await readTallies(byName, faults);
  const optional = readOptionalFiles(byName, faults);
  const timeZones = [...Intl.supportedValuesOf('timeZone'), ...alsoTimeZone(count.value)];
  return checkCount({ count, places, tallies, ...optional, faults, timeZones });
}

/** Uploads may carry the folder's path in front of the name. */
function filesByName(
  files: readonly FolderFile[],
  faults: Fault[],
): ReadonlyMap<string, FolderFile> {
  const byName = new Map<string, FolderFile>();
  for (const file of files) {
    const name = file.name.split(/[\\/]/u).at(-1) ?? file.name;
    if (!(FOLDER_FILES as readonly string[]).includes(name)) continue;
    if (byName.has(name)) {
      faults.push(
        fileFault(name, 'duplicate-file', say('the file is there twice'), say('each file once')),
      );
    }
    byName.set(name, { name, content: file.content });
  }
  return byName;
}

function document(
  name: FolderFileName,
  files: ReadonlyMap<string, FolderFile>,
  faults: Fault[],
): RawDocument {
  const file = files.get(name);
  if (file !== undefined) return readJson(file, faults);
  const expected = say('a count folder with count.json, places.geojson and tallies.csv');
  faults.push(fileFault(name, 'missing-file', say('the file is missing'), expected));
  return { file: name, value: undefined };
}

async function readTallies(
  files: ReadonlyMap<string, FolderFile>,
  faults: Fault[],
): Promise<RawTable | null> {
  const [csv, workbook] = [files.get('tallies.csv'), files.get('tallies.xlsx')];
  if (csv !== undefined && workbook !== undefined) {
    const problem = say('tallies.csv is there too, and only one of them can be right');
    faults.push(fileFault('tallies.xlsx', 'duplicate-file', problem, say('one of the two')));
  }
  if (csv !== undefined) return readCsv(csv, faults);
  if (workbook !== undefined) return readWorkbook(workbook, faults);
  const expected = say('tallies.csv, or tallies.xlsx with the same columns');
  faults.push(fileFault('tallies.csv', 'missing-file', say('the file is missing'), expected));
  return null;
}

/** Former and linked names, such as UTC, are valid too but not on the machine's list. */
function alsoTimeZone(count: unknown): readonly string[] {
  if (typeof count !== 'object' || count === null || !('timeZone' in count)) return [];
  const name = count.timeZone;
  if (typeof name !== 'string' || /^[+-]/u.test(name)) return [];
  try {
    return [new Intl.DateTimeFormat('en', { timeZone: name })].map(() => name);
  } catch {
    return [];
  }
}
