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
  const samples = samplesInOrder([...record.samples, ...current.flatMap((each) => each.samples)]);
  const marks = marksInOrder([...record.marks, ...current.flatMap((each) => each.marks)]);
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

/** The hash that a sign-off names: of all current tallies and all rulings in force. */
export async function inputHashOf(source: Source, record: CountRecord): Promise<string> {
  const tallies = await loadTallies(source, record.id);
  const rulings = await loadRulings(source, record.id);
  return inputText(reviewInput(record, tallies, rulings)).hash;
}
