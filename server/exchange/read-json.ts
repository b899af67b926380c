import type { Fault } from '../core/model/fault.js';
import type { RawDocument } from '../core/model/raw.js';
import { decodeText } from './decode-text.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';
import { type Saying, say } from '../core/model/saying.js';

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
        notJson(error, text),
        say(
          'JSON: names and texts in double quotes, a comma between entries and none after the last',
        ),
      ),
    );
    return { file: file.name, value: undefined };
  }
}

/** Where parsing stopped, as an editor counts lines; nothing of it if the engine does not say. */
function notJson(error: unknown, text: string): Saying {
  const position = /at position (\d+)/u.exec(String(error))?.[1];
  if (position === undefined) {
    return text.trim() === ''
      ? say('the file is not JSON: it is empty')
      : say('the file is not JSON: it ends too early');
  }
  const before = text.slice(0, Number(position)).split('\n');
  return say('the file is not JSON: it goes wrong at line {line}, character {character}', {
    line: String(before.length),
    character: String((before.at(-1) ?? '').length + 1),
  });
}
