import { UnionFind } from '../math/union-find.js';
import { instant } from '../model/time.js';
import type { CountWindow, Snapshot, Tally, TallyLine } from '../model/snapshot.js';
import { looksOf, type Look } from './looks.js';

export type Layer = 'using' | 'flying-through';

/** The aligned place × window that observers are compared on, with what each saw there. */
export interface AlignedCell {
  readonly id: string;
  /** Section ids, sorted. */
  readonly place: readonly string[];
  readonly window: string;
  readonly layer: Layer;
  readonly looks: readonly Look[];
  /** Cells of the same window that share a section with this one: successive counts of it. */
  readonly successiveTo: readonly string[];
}

/**
 * Groups tallies into cells: the connected components of "shares a section and was made at the same
 * time" within a window (method section 2: the join of the observers' partitions of place and time).
 * Birds that only flew through are laid in a layer of their own.
 *
 * @returns cells sorted by id; every line of every tally is in exactly one.
 */
export function alignCells(snapshot: Snapshot): AlignedCell[] {
  return snapshot.windows
    .flatMap((window) => cellsOfWindow(snapshot, window))
    .sort((one, other) => (one.id < other.id ? -1 : 1));
}

function cellsOfWindow(snapshot: Snapshot, window: CountWindow): AlignedCell[] {
  const tallies = snapshot.tallies.filter((tally) => tally.window === window.id);
  const components = new UnionFind(tallies.length);
  tallies.forEach((one, i) => {
    tallies.forEach((other, j) => {
      if (i < j && sharesSection(one, other) && areSimultaneous(one, other, window)) {
        components.join(i, j);
      }
    });
  });
  const blocks = components
    .sets()
    .map((members) => members.flatMap((index) => tallies[index] ?? []))
    .map((members) => ({
      place: placeOf(members),
      tallies: members,
      start: earliest(members, window),
    }));

  return blocks.flatMap((block) => {
    const successive = blocks.filter(
      (other) => other !== block && other.place.some((section) => block.place.includes(section)),
    );
    const name = (each: (typeof blocks)[number]): string =>
      cellName(each.place, window, blocks, each);
    const id = name(block);
    const base = { place: block.place, window: window.id };
    const using: AlignedCell = {
      ...base,
      id,
      layer: 'using',
      looks: looksOf(block.place, block.tallies, isUsingTheWater),
      successiveTo: successive.map(name).sort(),
    };
    if (!block.tallies.some((tally) => tally.lines.some(isFlyingThrough))) return [using];
    return [
      using,
      {
        ...base,
        id: `${id}:flying-through`,
        layer: 'flying-through' as const,
        looks: looksOf(block.place, block.tallies, isFlyingThrough),
        successiveTo: successive.map((each) => `${name(each)}:flying-through`).sort(),
      },
    ];
  });
}

/** `s1:w1`, `s3+s4:w1`; successive counts of a place get `:2`, `:3` … in order of time. */
function cellName(
  place: readonly string[],
  window: CountWindow,
  blocks: readonly { place: readonly string[]; start: number }[],
  block: { start: number },
): string {
  const base = `${place.join('+')}:${window.id}`;
  const earlier = blocks.filter(
    (other) => other.place.join('+') === place.join('+') && other.start < block.start,
  ).length;
  return earlier === 0 ? base : `${base}:${earlier + 1}`;
}

function sharesSection(one: Tally, other: Tally): boolean {
  return one.sections.some((section) => other.sections.includes(section));
}

/** Intervals that overlap, or lie apart by no more than the window's slack. */
function areSimultaneous(one: Tally, other: Tally, window: CountWindow): boolean {
  const slack = window.slackMinutes * 60_000;
  const a = spanOf(one, window);
  const b = spanOf(other, window);
  return a.start <= b.end + slack && b.start <= a.end + slack;
}

/** When a tally was made, in milliseconds; the window's own times where the tally gives none. */
export function spanOf(tally: Tally, window: CountWindow): { start: number; end: number } {
  return {
    start: instant(tally.start ?? window.start) ?? 0,
    end: instant(tally.end ?? window.end) ?? 0,
  };
}

function earliest(tallies: readonly Tally[], window: CountWindow): number {
  return Math.min(...tallies.map((tally) => spanOf(tally, window).start));
}

function placeOf(tallies: readonly Tally[]): string[] {
  return [...new Set(tallies.flatMap((tally) => tally.sections))].sort();
}

function isFlyingThrough(line: TallyLine): boolean {
  return line.activity === 'flying-through';
}

function isUsingTheWater(line: TallyLine): boolean {
  return !isFlyingThrough(line);
}
