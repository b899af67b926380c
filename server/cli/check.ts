import type { CheckedCount } from '../core/model/check-count.js';
import { faultSentence, type Fault } from '../core/model/fault.js';
import { checkFolder } from '../exchange/check-folder.js';
import { openFolder } from '../exchange/open-folder.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';

export type Loaded =
  | { readonly ok: true; readonly count: Extract<CheckedCount, { ok: true }> }
  | { readonly ok: false; readonly code: ExitCode };

/** Reads and checks a folder; whatever is wrong has been said by the time this returns. */
export async function loadFolder(folder: string, streams: Streams): Promise<Loaded> {
  const opened = await openFolder(folder);
  if (!opened.ok) {
    streams.err(`${opened.reason}\n`);
    return { ok: false, code: EXIT.unreadable };
  }
  const checked = await checkFolder(opened.files);
  for (const note of checked.notes) streams.err(`Note: ${note}\n`);
  if (checked.ok) return { ok: true, count: checked };
  sayFaults(checked.faults, streams.err);
  return { ok: false, code: EXIT.faults };
}

/** One sentence a line, then how many there are. */
export function sayFaults(faults: readonly Fault[], say: (text: string) => void): void {
  for (const fault of faults) say(`${faultSentence(fault)}\n`);
  say(faults.length === 1 ? '1 thing needs mending.\n' : `${faults.length} things need mending.\n`);
}

/** `countersign check FOLDER`: faults only. */
export async function check(folder: string, streams: Streams): Promise<ExitCode> {
  const loaded = await loadFolder(folder, { ...streams, err: streams.out });
  if (!loaded.ok) return loaded.code;
  const { tallies, sections } = loaded.count.snapshot;
  const lines = tallies.reduce((sum, tally) => sum + tally.lines.length, 0);
  streams.out(
    `Nothing to mend: ${tallies.length} tallies, ${lines} lines, ${sections.length} sections.\n`,
  );
  return EXIT.clean;
}
