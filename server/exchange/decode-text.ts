import type { Fault } from '../core/model/fault.js';
import { fileFault } from './file-fault.js';
import type { FolderFile } from './folder-files.js';
import { say } from '../core/model/saying.js';

/** The text of a file without its byte-order mark, or `null` with a fault if it is not UTF-8. */
export function decodeText(file: FolderFile, faults: Fault[]): string | null {
  if (typeof file.content === 'string') return file.content.replace(/^\uFEFF/u, '');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(file.content);
  } catch {
    faults.push(
      fileFault(
        file.name,
        'not-utf8',
        say('the file is not UTF-8 text'),
        say('UTF-8, which a spreadsheet offers as "CSV UTF-8" when it saves'),
      ),
    );
    return null;
  }
}
