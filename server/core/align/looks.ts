import { keyOf } from '../taxa/candidate-set.js';
import { numberOf } from '../model/quantity.js';
import type { Scope, Species, Tally, TallyLine } from '../model/snapshot.js';

/**
 * What one observer, or several who together cover the place, saw of a cell: the unit that is
 * compared with others.
 */
export interface Look {
  /** Observer id; ids joined by `+` where several together cover the place. */
  readonly observer: string;
  /** Everyone who contributed, sorted. */
  readonly party: readonly string[];
  readonly tallies: readonly Tally[];
  /** Section ids that the tallies name, sorted. */
  readonly sections: readonly string[];
  /** Share of its sections that was seen: the least of its tallies'. */
  readonly coverage: number;
  /** Saw all of the place: enters consensus. */
  readonly full: boolean;
  readonly scopes: readonly Scope[];
  readonly lines: readonly LookLine[];
}

/** All that a look says of one identification. */
export interface LookLine {
  readonly candidates: readonly Species[];
  /** Whole birds; 0 for a stated zero. */
  readonly number: number;
  /** The tally lines added up, sorted by id. */
  readonly sources: readonly TallyLine[];
  /** Some were seen but not counted, so the number is too low. */
  readonly presentNotCounted: boolean;
}

/** More ways than this to join parts are not tried: the parts then stay lower bounds. */
const MOST_WAYS = 64;

/**
 * Forms the looks of a cell. An observer's tallies of the cell are one look. Where observers cover
 * only parts of a merged place, every way to put such parts together into the whole, without gap or
 * overlap, is a look as well, so that it can be held against who counted the place whole. Ways that
 * share an observer are not independent and later count as one, so no name decides who is joined.
 */
export function looksOf(
  place: readonly string[],
  tallies: readonly Tally[],
  wanted: (line: TallyLine) => boolean,
): Look[] {
  const byObserver = new Map<string, Tally[]>();
  for (const tally of tallies) {
    byObserver.set(tally.observer, [...(byObserver.get(tally.observer) ?? []), tally]);
  }
  const single = [...byObserver.entries()].map(([observer, own]) =>
    look(observer, own, place, wanted),
  );
  const parts = single
    .filter((each) => each.sections.length < place.length)
    .sort((one, other) => (one.observer < other.observer ? -1 : 1));
  const joined = waysToJoin(parts, place).map((way) =>
    look(
      way.map((each) => each.observer).join('+'),
      way.flatMap((each) => each.tallies),
      place,
      wanted,
    ),
  );
  return [...single, ...joined].sort((one, other) => (one.observer < other.observer ? -1 : 1));
}

/** Every choice of parts that covers each section of the place exactly once. */
function waysToJoin(parts: readonly Look[], place: readonly string[]): Look[][] {
  const most = place.reduce(
    (product, section) =>
      product * Math.max(1, parts.filter((part) => part.sections.includes(section)).length),
    1,
  );
  return most > MOST_WAYS ? [] : extend(parts, place, []);
}

function extend(
  parts: readonly Look[],
  missing: readonly string[],
  chosen: readonly Look[],
): Look[][] {
  const [section] = missing;
  if (section === undefined) {
    return [[...chosen].sort((one, other) => (one.observer < other.observer ? -1 : 1))];
  }
  return parts
    .filter(
      (part) =>
        part.sections.includes(section) && part.sections.every((each) => missing.includes(each)),
    )
    .flatMap((part) =>
      extend(
        parts,
        missing.filter((each) => !part.sections.includes(each)),
        [...chosen, part],
      ),
    );
}

function look(
  observer: string,
  tallies: readonly Tally[],
  place: readonly string[],
  wanted: (line: TallyLine) => boolean,
): Look {
  const ordered = [...tallies].sort((one, other) => (one.id < other.id ? -1 : 1));
  const sections = [...new Set(tallies.flatMap((tally) => tally.sections))].sort();
  const coverage = Math.min(...tallies.map((tally) => tally.coverage));
  return {
    observer,
    party: [...new Set(tallies.flatMap((tally) => [tally.observer, ...tally.party]))].sort(),
    tallies: ordered,
    sections,
    coverage,
    full: coverage >= 1 && sections.length === place.length,
    scopes: ordered.map((tally) => tally.scope),
    lines: linesOf(ordered.flatMap((tally) => tally.lines).filter(wanted)),
  };
}

function linesOf(lines: readonly TallyLine[]): LookLine[] {
  const byKey = new Map<string, TallyLine[]>();
  for (const line of lines) {
    const key = keyOf(line.candidates);
    byKey.set(key, [...(byKey.get(key) ?? []), line]);
  }
  return [...byKey.entries()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, same]) => ({
      candidates: same[0]?.candidates ?? [],
      number: same.reduce((sum, line) => sum + (numberOf(line.quantity) ?? 0), 0),
      sources: [...same].sort((one, other) => (one.id < other.id ? -1 : 1)),
      presentNotCounted: same.some((line) => line.quantity.kind === 'present'),
    }));
}
