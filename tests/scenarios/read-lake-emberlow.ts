import { checkRulings } from '../../server/core/model/check-rulings.js';
import { faultSentence } from '../../server/core/model/fault.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import type { Ruling } from '../../server/core/model/ruling.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import type { FolderFile } from '../../server/exchange/folder-files.js';
import { openFolder } from '../../server/exchange/open-folder.js';
import { FOLDER, textOf } from './lake-emberlow-files.js';

interface ReadCount {
  readonly snapshot: Snapshot;
  readonly protocol: Protocol;
  readonly notes: readonly string[];
}

/**
 * The scenario as the command line and the server read it.
 *
 * @param tallies another `tallies.csv` in its place.
 */
export async function readLakeEmberlow(tallies?: string): Promise<ReadCount> {
  const opened = await openFolder(FOLDER);
  if (!opened.ok) throw new Error(opened.reason);
  const replaced = (file: FolderFile): FolderFile =>
    file.name === 'tallies.csv' && tallies !== undefined
      ? { name: file.name, content: new TextEncoder().encode(tallies) }
      : file;
  const checked = await checkFolder(opened.files.map(replaced));
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  return checked;
}

/** `rulings.json` of the scenario. */
export function readRulings(snapshot: Snapshot): readonly Ruling[] {
  const file = 'rulings.json';
  const checked = checkRulings(JSON.parse(textOf(file)), snapshot, file);
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  return checked.value;
}
