import { FLOCK_AT_LEAST, type Flock } from '../../link/flock.js';
import { geodesicBetween } from '../../math/geodesy.js';
import { mean } from '../../math/sum.js';
import type { Cell } from '../../model/result.js';
import type { Position } from '../../model/snapshot.js';
import { independentObservers } from '../full-totals.js';
import type { ObservedFlock } from './observed-flock.js';
import { seenElsewhere, type Recorded } from './seen-elsewhere.js';

/** What agreement takes from the field beside the cells. */
export interface FlocksInField {
  /** Per cell, its flocks, each with its record by every observer who has one. */
  readonly matched: ReadonlyMap<string, readonly (readonly Flock[])[]>;
  /** Where the observer of a tally stood, as far as it is known. */
  readonly standing: ReadonlyMap<string, Position>;
}

/** The flocks of all cells that the same observers counted in full and independently. */
export interface ObservedSet {
  /** Sorted. */
  readonly observers: readonly string[];
  readonly cells: readonly string[];
  readonly flocks: readonly ObservedFlock[];
}

/**
 * Who saw which flock, by the set of observers of a cell: what detection is estimated from.
 *
 * Only flocks that can be followed (`flocksOf`), and none smaller than {@link FLOCK_AT_LEAST}: a few birds
 * are followed only by those who noted their place, which says nothing of who saw them. An observer who has no record matched to a flock missed
 * it, unless its birds are elsewhere in this observer's tally (`seenElsewhere`).
 */
export function observedSets(cells: readonly Cell[], field: FlocksInField): ObservedSet[] {
  const sets = new Map<string, { observers: string[]; cells: string[]; flocks: ObservedFlock[] }>();
  for (const cell of cells) {
    const observers = independentObservers(cell);
    if (observers.length < 2) continue;
    const key = observers.join('\n');
    const set = sets.get(key) ?? { observers, cells: [], flocks: [] };
    sets.set(key, set);
    set.cells.push(cell.id);
    set.flocks.push(...flocksIn(cell, observers, field));
  }
  return [...sets.keys()].sort().flatMap((key) => {
    const set = sets.get(key);
    if (set === undefined || set.flocks.length === 0) return [];
    const flocks = set.flocks.sort((one, other) => (one.key < other.key ? -1 : 1));
    return [{ ...set, cells: set.cells.sort(), flocks }];
  });
}

function flocksIn(
  cell: Cell,
  observers: readonly string[],
  { matched, standing }: FlocksInField,
): ObservedFlock[] {
  const tallies = observers.map((observer) =>
    cell.tallies.flatMap((each) => (each.observer === observer ? each.tally.split('+') : [])),
  );
  const recorded = (matched.get(cell.id) ?? []).flatMap((records): Recorded[] => {
    const by = tallies.map((ids) => records.filter(({ tally }) => ids.includes(tally.id)));
    const own = by.flat();
    if (!own.some(({ number }) => number >= FLOCK_AT_LEAST)) return [];
    const flock = {
      cell: cell.id,
      key: own
        .flatMap(({ lines }) => lines.map(({ id }) => id))
        .sort()
        .join('+'),
      seenBy: by.map((records) => records.length > 0),
      number: own.reduce((total, { number }) => total + number, 0) / own.length,
      distances: tallies.map((ids) => distanceTo(own, ids, standing)),
    };
    return [{ flock, by }];
  });
  const elsewhere = observers.map((one, place) =>
    observers.map((other, otherPlace) =>
      place === otherPlace
        ? new Set<string>()
        : seenElsewhere(cell, recorded, { one, other, place, otherPlace }),
    ),
  );
  return recorded.map(({ flock }) => ({
    ...flock,
    seenBy: flock.seenBy.map(
      (seen, place) => seen || elsewhere.some((by) => by[place]?.has(flock.key) === true),
    ),
  }));
}

/** From where an observer stood to the middle of the positions noted of a flock, in kilometres. */
function distanceTo(
  records: readonly Flock[],
  tallies: readonly string[],
  standing: FlocksInField['standing'],
): number | null {
  const positions = records.flatMap(({ position }) => (position === null ? [] : [position]));
  const from =
    tallies.map((tally) => standing.get(tally)).find((place) => place !== undefined) ?? null;
  if (positions.length === 0 || from === null) return null;
  const middle = (axis: 0 | 1): number => mean(positions.map((position) => position[axis]));
  return geodesicBetween(from, [middle(0), middle(1)]).distance / 1000;
}
