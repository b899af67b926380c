import { keyOf, overlaps } from '../taxa/candidate-set.js';
import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { CountWindow, Tally, TallyLine } from '../model/snapshot.js';
import type { SetFits } from './composition.js';
import { birdsOf, canBeFollowed, FLOCK_AT_LEAST, flockFrom, type Flock } from './flock.js';
import { matchObservers } from './match-observers.js';
import type { Waterbody } from './whereabouts.js';

/** A total stands for no more flocks than this, however large it is: then it is rather one raft. */
const MOST_FLOCKS = 10;

/** A total of birds that others of the same place have flock by flock tells nothing more. */
const MOSTLY_FOLLOWED = 0.5;

/**
 * Numbers of a whole section that nothing divides into flocks ("4,200 scaup"): lines of one identification
 * in one tally that cannot be followed, at least {@link FLOCK_AT_LEAST} birds together, matched between
 * the observers of a cell like flocks. Where others of the cell have most of the birds as flocks, these are
 * followed instead.
 *
 * @param tallies of one cell
 * @param followed the flocks of that cell that are followed
 */
export function totalsOf(
  tallies: readonly Tally[],
  followed: readonly Flock[],
  window: CountWindow,
  waterbody: Waterbody,
  setFits: SetFits,
  protocol: Protocol,
): Flock[][] {
  const byTally = tallies
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map((tally) =>
      [...linesOfTotals(tally).values()]
        .filter((lines) => birdsOf(lines) >= FLOCK_AT_LEAST)
        .map((lines) => flockFrom(tally, lines, window, protocol))
        .filter((total) => !isFollowed(total, followed))
        .toSorted((a, b) => (a.key < b.key ? -1 : 1)),
    );
  return byTally.some((totals) => totals.length > 0)
    ? matchObservers(byTally, waterbody, setFits)
    : [];
}

/** Lines of a tally that cannot be followed, by identification, each list sorted by id. */
export function linesOfTotals({ lines }: Tally): ReadonlyMap<string, readonly TallyLine[]> {
  const byKind = new Map<string, TallyLine[]>();
  for (const line of lines.toSorted((a, b) => (a.id < b.id ? -1 : 1))) {
    const isCounted = line.activity !== 'flying-through' && numberOf(line.quantity) !== null;
    if (!isCounted || canBeFollowed(line)) continue;
    const key = keyOf(line.candidates);
    byKind.set(key, [...(byKind.get(key) ?? []), line]);
  }
  return byKind;
}

function isFollowed(total: Flock, followed: readonly Flock[]): boolean {
  const kinds = total.parts.flatMap(({ candidates }) => candidates);
  const byTally = new Map<string, number>();
  for (const { tally, parts } of followed) {
    if (tally.id === total.tally.id) continue;
    for (const { candidates, number } of parts) {
      if (overlaps(candidates, kinds)) {
        byTally.set(tally.id, (byTally.get(tally.id) ?? 0) + number);
      }
    }
  }
  return Math.max(0, ...byTally.values()) >= MOSTLY_FOLLOWED * total.number;
}

/**
 * How many flocks a total stands for: as many of the usual size as it has birds for, from 1 to
 * {@link MOST_FLOCKS}.
 *
 * @param usual birds of a flock in this count on average; `null` if none is followed
 */
export function flocksInTotal(number: number, usual: number | null): number {
  return usual === null ? 1 : Math.min(MOST_FLOCKS, Math.max(1, number / usual));
}
