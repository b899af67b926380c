import { checkHistory } from './check-history.js';
import { checkMarks } from './check-marks.js';
import { checkPlaces } from './check-places.js';
import { checkPlan } from './check-plan.js';
import { checkProtocol } from './check-protocol.js';
import { checkRepeats } from './check-repeats.js';
import { checkSamples } from './check-samples.js';
import { checkTallies } from './check-tallies.js';
import type { Fault } from './fault.js';
import type { Protocol } from './protocol.js';
import type { KnownIds, RawCount, RawTable } from './raw.js';
import type { Snapshot } from './snapshot.js';

export type CheckedCount =
  | {
      readonly ok: true;
      readonly snapshot: Snapshot;
      readonly protocol: Protocol;
      /** What was there but not read, a sentence each. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly faults: readonly Fault[]; readonly notes: readonly string[] };

/**
 * Checks a whole count as it came in from outside: either every value that `reconcile` needs, in
 * canonical order (lists sorted by id, so that the order of rows and keys does not matter), or
 * every fault at once. Never throws, and never leaves a line out.
 */
export function checkCount(raw: RawCount): CheckedCount {
  const faults: Fault[] = [...raw.faults];
  const notes: string[] = [];
  const { plan, peopleIds, windowIds, protocol } = checkPlan(
    raw.count,
    raw.timeZones,
    faults,
    notes,
  );
  const places = checkPlaces(raw.places, faults);
  const { sections, vantages, views, shoreline, sectionIds, vantageIds } = places;
  const known = {
    people: peopleIds,
    windows: windowIds,
    sections: sectionIds,
    vantages: vantageIds,
    waters: new Map(sections.map(({ id, polygon }) => [id, polygon])),
  };
  const settings = checkProtocol(protocol, raw.count.file, known, faults);
  const history = checkHistory(raw.history, plan.date, faults);
  const empty = { ...plan, sections, vantages, views, tallies: [], history, samples: [] };
  const counted =
    raw.tallies === null ? empty : withTallies(empty, raw.tallies, known, faults, notes);
  const samples = checkSamples(raw.samples, counted.tallies, faults);
  const marks = checkMarks(raw.marks, counted.tallies, faults);
  const snapshot = {
    ...counted,
    samples,
    ...(marks.length > 0 && { marks }),
    ...(shoreline.length > 0 && { shoreline }),
  };
  if (faults.length > 0) return { ok: false, faults: inReadingOrder(faults), notes };
  return { ok: true, snapshot, protocol: settings, notes };
}

function withTallies(
  plan: Snapshot,
  table: RawTable,
  known: KnownIds,
  faults: Fault[],
  notes: string[],
): Snapshot {
  const { tallies, firstRows } = checkTallies(table, known, faults, notes);
  const snapshot = { ...plan, tallies };
  checkRepeats(snapshot, table.file, firstRows, faults);
  return snapshot;
}

/** By file as they were read, then by row; faults of one row stay in the order of its columns. */
function inReadingOrder(faults: readonly Fault[]): readonly Fault[] {
  const files = [...new Set(faults.map((fault) => fault.file))];
  return faults
    .map((fault, index) => ({ fault, index }))
    .sort(
      (a, b) =>
        files.indexOf(a.fault.file) - files.indexOf(b.fault.file) ||
        (a.fault.row ?? 0) - (b.fault.row ?? 0) ||
        a.index - b.index,
    )
    .map(({ fault }) => fault);
}
