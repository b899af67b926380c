import type { Tally } from '../model/snapshot.js';
import { keyOf } from '../taxa/candidate-set.js';
import type { PassingSighting, SightedLine, Sighting } from './sightings.js';
import type { Turn } from './turn.js';

/** One tally with what was behind it. */
export interface TurnRecord {
  readonly turn: Turn;
  /** Ids of the sections that it tallies. */
  readonly sections: readonly string[];
  readonly tally: Tally;
  readonly sightings: readonly Sighting[];
  /**
   * Where the tally has one total a taxon: what it has instead of the sightings' own lines, which
   * then only say what the totals are made of. `null` where it is flock by flock.
   */
  readonly totals: readonly SightedLine[] | null;
  readonly passing: readonly PassingSighting[];
}

/** A line of a tally, by its id, with the sighting that it is from. */
export interface RecordedLine {
  readonly id: string;
  readonly line: SightedLine;
  readonly sighting: Sighting;
  readonly record: TurnRecord;
}

export function shareSection(one: TurnRecord, other: TurnRecord): boolean {
  return one.sections.some((section) => other.sections.includes(section));
}

/** Whether they count together, so that neither speaks against the other. */
export function areParty(one: TurnRecord, other: TurnRecord): boolean {
  return one.tally.party.some((person) => other.tally.party.includes(person));
}

/**
 * The lines about flocks on the water, in the order of the tally; a total once for every flock in it,
 * with that flock's share.
 */
export function linesOf(record: TurnRecord): RecordedLine[] {
  const { sightings, tally, totals } = record;
  const keys = totals?.map(({ candidates }) => keyOf(candidates));
  return sightings
    .flatMap((sighting) => sighting.lines.map((line) => ({ line, sighting })))
    .map(({ line, sighting }, index) => {
      const at = keys === undefined ? index : keys.indexOf(keyOf(line.candidates));
      return { id: tally.lines[at]?.id ?? '', line, sighting, record };
    });
}
