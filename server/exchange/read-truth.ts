import type { Fault } from '../core/model/fault.js';
import type { Snapshot } from '../core/model/snapshot.js';
import type { Checked } from '../core/model/check-tally.js';
import { checkTruth } from '../core/score/check-truth.js';
import type { Truth } from '../core/score/truth.js';
import type { FolderFile } from './folder-files.js';
import { readJson } from './read-json.js';

/** Reads `truth.json` of a count folder: what was truly there, or every fault of the file. */
export function readTruth(file: FolderFile, snapshot: Snapshot): Checked<Truth> {
  const faults: Fault[] = [];
  const document = readJson(file, faults);
  return faults.length > 0 ? { ok: false, faults } : checkTruth(document, snapshot);
}
