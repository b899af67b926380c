import { alignCells } from '../align/cells.js';
import type { Fault } from './fault.js';
import type { Snapshot, Tally } from './snapshot.js';
import { say } from './saying.js';

/**
 * Finds tallies in which one observer counted the same section at what is taken for the same time:
 * an observer's tallies of a cell are added up, so their birds would count twice. A repeat that
 * lies clearly later is a successive count, and no fault.
 *
 * @param firstRows the row in which each tally begins.
 */
export function checkRepeats(
  snapshot: Snapshot,
  file: string,
  firstRows: ReadonlyMap<string, number>,
  faults: Fault[],
): void {
  for (const { layer, looks } of alignCells(snapshot)) {
    if (layer !== 'using') continue;
    for (const { tallies } of looks) {
      const rowOf = (tally: Tally): number => firstRows.get(tally.id) ?? 0;
      const inOrder = [...tallies].sort((a, b) => rowOf(a) - rowOf(b));
      for (const [index, tally] of inOrder.entries()) {
        const earlier = inOrder
          .slice(0, index)
          .find((one) => one.observer === tally.observer && sharedSections(one, tally).length > 0);
        if (earlier === undefined) continue;
        const sections = sharedSections(earlier, tally).join('+');
        const fault: Fault = {
          code: 'counted-twice',
          file,
          row: firstRows.get(tally.id) ?? null,
          column: 'tally',
          value: tally.id,
          problem: say(
            '{observer} has counted {sections} in window {window} in tally {id} too, at what is taken for the same time',
            { observer: tally.observer, sections, window: tally.window, id: earlier.id },
          ),
          expected: say(
            'one tally for each observer, section and time, or a later window for a repeat',
          ),
          nearest: null,
        };
        const isSaid = faults.some(
          ({ code, value }) => code === fault.code && value === fault.value,
        );
        if (!isSaid) faults.push(fault);
      }
    }
  }
}

function sharedSections(one: Tally, other: Tally): readonly string[] {
  return one.sections.filter((section) => other.sections.includes(section));
}
