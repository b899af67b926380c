import type { Flock } from './flock.js';
import { instant } from '../model/time.js';
import type { FlockSighting } from './sightings.js';

const MINUTE = 60_000;

/** Where in its span a time is tried, if it was not noted: three even steps. */
const PARTS_OF_SPAN = [1 / 6, 1 / 2, 5 / 6];

/** Minutes at which it was last seen, at several points of any span. */
export function leftAt(flocks: readonly Flock[]): number[] {
  return parts(flocks).map((part) =>
    // A noted time is one instant; of several instants, the last before it left.
    Math.max(
      ...flocks.map((flock) => (isNoted(flock) ? flock.moment.end : at(part, flock)) / MINUTE),
    ),
  );
}

/** Minutes at which it was first seen, at several points of any span. */
export function cameAt(flocks: readonly Flock[]): number[] {
  return parts(flocks).map((part) =>
    Math.min(
      ...flocks.map((flock) => (isNoted(flock) ? flock.moment.start : at(part, flock)) / MINUTE),
    ),
  );
}

/** Minutes spread over the time in which its tally was made; where it was seen if that is not said. */
export function overSpan(flocks: readonly Flock[]): number[] {
  const [first] = flocks;
  if (first === undefined) return [];
  const { start, end } = first.tally;
  const moment = {
    start: (start === null ? null : instant(start)) ?? first.moment.start,
    end: (end === null ? null : instant(end)) ?? first.moment.end,
  };
  return PARTS_OF_SPAN.map((part) => (moment.start + part * (moment.end - moment.start)) / MINUTE);
}

function parts(flocks: readonly Flock[]): readonly number[] {
  return flocks.every(isNoted) ? [0.5] : PARTS_OF_SPAN;
}

function at(part: number, { moment }: Flock): number {
  return moment.start + part * (moment.end - moment.start);
}

function isNoted(flock: Flock): boolean {
  return flock.lines.some((line) => line.time !== null);
}

/** The middle of when it was seen, in minutes. */
export function middleOfSighting(sighting: FlockSighting): number {
  const mids = sighting.flocks.map(({ moment }) => (moment.start + moment.end) / 2 / MINUTE);
  return Math.min(...mids);
}

/** The flock with a position that was seen last, and the one that was seen first. */
export function latestPlaced(flocks: readonly Flock[]): Flock | undefined {
  return flocks
    .filter((flock) => flock.position !== null)
    .toSorted((a, b) => b.moment.end - a.moment.end || (a.key < b.key ? -1 : 1))[0];
}

export function earliestPlaced(flocks: readonly Flock[]): Flock | undefined {
  return flocks
    .filter((flock) => flock.position !== null)
    .toSorted((a, b) => a.moment.start - b.moment.start || (a.key < b.key ? -1 : 1))[0];
}
