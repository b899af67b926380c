import { marksInOrder } from '../core/model/check-marks.js';
import { samplesInOrder } from '../core/model/check-samples.js';
import type { Protocol } from '../core/model/protocol.js';
import type { Ruling } from '../core/model/ruling.js';
import type { Snapshot } from '../core/model/snapshot.js';
import { peopleOf, type CountRecord } from '../database/count-record.js';
import { loadRulings, type RulingRecord } from '../database/ruling-rows.js';
import type { Source } from '../database/source.js';
import { loadTallies, tallyOf, type TallyVersion } from '../database/tally-rows.js';
import { canonicalJson, sha256 } from '../seals/canonical.js';
import { currentTallies } from '../tallies/blindness.js';
import { rulingsInForce } from './rulings-in-force.js';

/** Everything that `reconcile` reads. */
export interface ReviewInput {
  readonly snapshot: Snapshot;
  readonly rulings: readonly Ruling[];
  readonly protocol: Protocol;
}

/** The input as text, which is what is hashed and sealed, and its SHA-256. */
export function inputText(input: ReviewInput): { readonly text: string; readonly hash: string } {
  const text = canonicalJson(input);
  return { text, hash: sha256(text) };
}

/** Puts the input together from what was loaded; lists are in the order of their ids. */
export function reviewInput(
  record: CountRecord,
  tallies: readonly TallyVersion[],
  rulings: readonly RulingRecord[],
): ReviewInput {
  const { id, name, waterbody, date, timeZone, windows, sections, vantages, views } = record;
  const { history, shoreline } = record;
  const current = currentTallies(tallies);
  const brought = aboutCurrent(record, current);
  const samples = samplesInOrder([...brought.samples, ...current.flatMap((each) => each.samples)]);
  const marks = marksInOrder([...brought.marks, ...current.flatMap((each) => each.marks)]);
  return {
    snapshot: {
      id,
      name,
      waterbody,
      date,
      timeZone,
      windows,
      people: peopleOf(record),
      sections,
      vantages,
      views,
      tallies: current.map(tallyOf),
      history,
      samples,
      ...(marks.length > 0 && { marks }),
      ...(shoreline.length > 0 && { shoreline }),
    },
    rulings: rulingsInForce(rulings).map(({ ruling }) => ruling),
    protocol: record.protocol,
  };
}

/**
 * Of the samples and marks that came with a count folder, those whose lines still stand: a correction of
 * the tally has lines of its own, and brings what was noted of them.
 */
export function aboutCurrent(
  { samples, marks }: Pick<CountRecord, 'samples' | 'marks'>,
  current: readonly Pick<TallyVersion, 'id' | 'lines'>[],
): Pick<CountRecord, 'samples' | 'marks'> {
  const lines = new Set(current.flatMap((tally) => tally.lines.map(({ id }) => id)));
  const hasFlock = (label: string, tally: string | undefined): boolean =>
    current.some(
      (each) => (tally ?? each.id) === each.id && each.lines.some(({ flock }) => flock === label),
    );
  return {
    samples: samples.filter(({ raft, tally }) => lines.has(raft) || hasFlock(raft, tally)),
    marks: marks.filter(({ line }) => lines.has(line)),
  };
}

/** The hash that a sign-off names: of all current tallies and all rulings in force. */
export async function inputHashOf(source: Source, record: CountRecord): Promise<string> {
  const tallies = await loadTallies(source, record.id);
  const rulings = await loadRulings(source, record.id);
  return inputText(reviewInput(record, tallies, rulings)).hash;
}
