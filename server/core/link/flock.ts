import { malesIn, type Males } from './sexes.js';
import { keyOf } from '../taxa/candidate-set.js';
import { varianceOf } from '../compare/counting-error.js';
import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { CountWindow, Position, Species, Tally, TallyLine } from '../model/snapshot.js';
import { instant } from '../model/time.js';

/**
 * Fewest birds that are followed, where something was noted of them. One bird by itself is too like
 * others (common practice, no source).
 */
const FOLLOWED_AT_LEAST = 1;

/** Fewest birds that are spoken of as a flock: smaller parties are noticed by chance. */
export const FLOCK_AT_LEAST = 10;

/**
 * No two counts of a flock agree better than this, whatever the method: birds dive, join and leave
 * while they are counted (standard deviation of ln number; common practice, no source).
 */
const LEAST_LOG_ERROR = 0.05;

/** Birds of one identification in a flock. */
export interface Part {
  readonly candidates: readonly Species[];
  /** The key of its candidate set. */
  readonly key: string;
  readonly number: number;
}

/** A span of milliseconds in which the birds were seen at some instant; no span if it was noted. */
interface Moment {
  readonly start: number;
  readonly end: number;
}

/** One flock as one observer recorded it: a line, or the lines that share a flock label. */
export interface Flock {
  readonly tally: Tally;
  /** Sorted by id. */
  readonly lines: readonly TallyLine[];
  /** Line ids joined by `+`. */
  readonly key: string;
  readonly number: number;
  /** Variance of ln number. */
  readonly logVariance: number;
  readonly parts: readonly Part[];
  readonly males: Males | null;
  readonly moment: Moment;
  /** The first of its lines' positions, headings and label, if any has one. */
  readonly position: Position | null;
  readonly heading: number | null;
  readonly label: string | null;
  /** Section ids that its lines name, sorted. */
  readonly to: readonly string[];
  readonly from: readonly string[];
  /** What its lines say the birds did; `flushed` if any line says so, else that of most birds. */
  readonly activity: 'water' | 'land' | 'flushed';
}

/**
 * The flocks of a tally that can be followed: birds using the waterbody, counted, at least
 * {@link FOLLOWED_AT_LEAST}, with a time, position, flock label, heading or section that they came from
 * or went to. A plain section total has none of these and may be any number of flocks: see `totals.ts`.
 * Sorted by key.
 */
export function flocksOf(tally: Tally, window: CountWindow, protocol: Protocol): Flock[] {
  const byFlock = new Map<string, TallyLine[]>();
  for (const line of tally.lines) {
    if (line.activity === 'flying-through' || numberOf(line.quantity) === null) continue;
    // A label cannot equal a line's own key: it comes with another prefix.
    const label = labelOf(line);
    const key = label === null ? `line ${line.id}` : `label ${label}`;
    byFlock.set(key, [...(byFlock.get(key) ?? []), line]);
  }
  return [...byFlock.values()]
    .map((lines) => lines.toSorted((a, b) => (a.id < b.id ? -1 : 1)))
    .filter((lines) => birdsOf(lines) >= FOLLOWED_AT_LEAST && lines.some(canBeFollowed))
    .map((lines) => flockFrom(tally, lines, window, protocol))
    .toSorted((a, b) => (a.key < b.key ? -1 : 1));
}

/** True where something was noted that tells a flock from others: a total of a section has nothing. */
export function canBeFollowed(line: TallyLine): boolean {
  const hints = [line.time, line.position, labelOf(line), line.heading, line.from, line.to];
  return hints.some((hint) => hint !== null);
}

/** The flock's label as it is compared: without regard to case. */
export function labelOf(line: TallyLine): string | null {
  const label = line.flock?.trim().toLowerCase() ?? '';
  return label === '' ? null : label;
}

/** Birds of some lines together. */
export function birdsOf(lines: readonly TallyLine[]): number {
  return lines.reduce((sum, line) => sum + (numberOf(line.quantity) ?? 0), 0);
}

/** Lines of one tally taken as one flock. */
export function flockFrom(
  tally: Tally,
  lines: readonly TallyLine[],
  window: CountWindow,
  protocol: Protocol,
): Flock {
  const number = birdsOf(lines);
  const variance = lines.reduce((sum, line) => sum + varianceOf(line, protocol), 0);
  const byCount = lines.toSorted((a, b) => birdsOf([b]) - birdsOf([a]));
  const firstOf = <Value>(pick: (line: TallyLine) => Value | null): Value | null =>
    byCount.map(pick).find((value) => value !== null) ?? null;
  return {
    tally,
    lines,
    key: lines.map((line) => line.id).join('+'),
    number,
    // A number is whole: its ln is known no better than by the step to the next (as if evenly within it).
    logVariance:
      Math.max(LEAST_LOG_ERROR ** 2, Math.log1p(variance / number ** 2)) + 1 / (12 * number ** 2),
    parts: mergeParts(
      lines.map((line) => ({
        candidates: line.candidates,
        number: numberOf(line.quantity) ?? 0,
      })),
    ),
    males: malesIn(lines, number),
    moment: momentOf(tally, lines, window),
    position: firstOf((line) => line.position),
    heading: firstOf((line) => line.heading),
    label: firstOf(labelOf),
    to: namesIn(lines.map((line) => line.to)),
    from: namesIn(lines.map((line) => line.from)),
    activity: activityOf(byCount),
  };
}

/** Parts of the same candidate set added up; sorted by set. */
export function mergeParts(parts: readonly Omit<Part, 'key'>[]): Part[] {
  const bySet = new Map<string, Part>();
  for (const { candidates, number } of parts) {
    const key = keyOf(candidates);
    bySet.set(key, { candidates, key, number: (bySet.get(key)?.number ?? 0) + number });
  }
  return [...bySet.entries()].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, part]) => part);
}

/** The times that lines note; failing these, sometime while the tally, or the window, lasted. */
function momentOf(tally: Tally, lines: readonly TallyLine[], window: CountWindow): Moment {
  const noted = lines
    .map((line) => (line.time === null ? null : instant(line.time)))
    .filter((time) => time !== null);
  if (noted.length > 0) return { start: Math.min(...noted), end: Math.max(...noted) };
  const start = instant(tally.start ?? window.start) ?? 0;
  return { start, end: Math.max(start, instant(tally.end ?? window.end) ?? start) };
}

function namesIn(names: readonly (string | null)[]): string[] {
  return [...new Set(names.filter((name) => name !== null))].toSorted();
}

function activityOf(byCount: readonly TallyLine[]): Flock['activity'] {
  if (byCount.some((line) => line.activity === 'flushed')) return 'flushed';
  return byCount[0]?.activity === 'land' ? 'land' : 'water';
}
