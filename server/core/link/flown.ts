import { numberOf } from '../model/quantity.js';
import type { Snapshot, TallyLine } from '../model/snapshot.js';
import { instant } from '../model/time.js';
import { kindFit, type SetFits } from './composition.js';
import { FLOCK_AT_LEAST, mergeParts } from './flock.js';
import type { FlockSighting } from './sightings.js';

/**
 * A flock in the air may leave some birds behind or take others along: its number may differ from a
 * sighting's by this factor (common practice, no source).
 */
const NUMBER_WITHIN = 2;

/** Noted times of a flight and of sightings on the water may overlap by this much. */
const SLACK_MINUTES = 10;

/** Birds seen flying from one section to another: they were counted on the water at neither. */
export interface Flight {
  readonly line: TallyLine;
  readonly window: string;
  readonly from: readonly string[];
  readonly to: readonly string[];
  readonly number: number;
}

/**
 * Lines of birds flying through that name a section they came from or went to. Where only one is
 * named, the other is the section of the tally: an observer who writes "to s2" saw them leave.
 * Such birds are no sighting (they are reported apart and use no section), but they are a witness
 * to a movement between two sightings.
 */
export function flightsOf(snapshot: Snapshot): Flight[] {
  return snapshot.tallies
    .flatMap((tally) =>
      tally.lines.flatMap((line) => {
        const number = numberOf(line.quantity) ?? 0;
        if (line.activity !== 'flying-through' || number < FLOCK_AT_LEAST) return [];
        if (line.from === null && line.to === null) return [];
        const from = line.from === null ? tally.sections : [line.from];
        const to = line.to === null ? tally.sections : [line.to];
        return [{ line, window: tally.window, from, to, number }];
      }),
    )
    .toSorted((a, b) => (a.line.id < b.line.id ? -1 : 1));
}

/** The first flight that may be the move from one sighting to the other, or `null`. */
export function flightBetween(
  first: FlockSighting,
  second: FlockSighting,
  flights: readonly Flight[],
  setFits: SetFits,
): Flight | null {
  if (flights.length === 0) return null;
  const between = flights.filter(
    ({ window, from, to }) =>
      window === first.window &&
      from.some((section) => first.sections.includes(section)) &&
      to.some((section) => second.sections.includes(section)),
  );
  if (between.length === 0) return null;
  const leaves = Math.min(...first.flocks.map((flock) => flock.moment.start));
  const arrives = Math.max(...second.flocks.map((flock) => flock.moment.end));
  const slack = SLACK_MINUTES * 60_000;
  const matches = (flight: Flight): boolean => {
    const time = flight.line.time === null ? null : instant(flight.line.time);
    if (time !== null && (time < leaves - slack || time > arrives + slack)) return false;
    const parts = mergeParts([{ candidates: flight.line.candidates, number: flight.number }]);
    return [first, second].every(
      (sighting) =>
        Math.abs(Math.log(flight.number) - sighting.size.mean) <= Math.log(NUMBER_WITHIN) &&
        kindFit(parts, sighting.parts, setFits) !== null,
    );
  };
  return between.find(matches) ?? null;
}
