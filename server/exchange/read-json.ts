import type { Fault } from '../core/model/fault.js';
import type { RawDocument } from '../core/model/raw.js';
import { decodeText } from './decode-text.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';

/** Parses a JSON file; on a mistake in it the value is `undefined` and a fault says where it is. */
export function readJson(file: FolderFile, faults: Fault[]): RawDocument {
  const text = decodeText(file, faults);
  if (text === null) return { file: file.name, value: undefined };
  try {
    return { file: file.name, value: JSON.parse(text) as unknown };
  } catch (error) {
    faults.push(
      fileFault(
        file.name,
        'bad-json',
        `the file is not JSON${placeOf(error, text)}`,
        'JSON: names and texts in double quotes, a comma between entries and none after the last',
      ),
    );
    return { file: file.name, value: undefined };
  }
}

/** Where parsing stopped, as an editor counts lines; empty if the engine does not say. */
function placeOf(error: unknown, text: string): string {
  const position = /at position (\d+)/u.exec(String(error))?.[1];
  if (position === undefined) return text.trim() === '' ? ': it is empty' : ': it ends too early';
  const before = text.slice(0, Number(position)).split('\n');
  return `: it goes wrong at line ${before.length}, character ${(before.at(-1) ?? '').length + 1}`;
}
