import { intersection, lookAlikesFrom, union, type LookAlikes } from '../taxa/candidate-set.js';
import type { Protocol } from '../model/protocol.js';
import type { Sighting } from '../model/result.js';
import type { CountWindow, Position, Snapshot, Tally } from '../model/snapshot.js';
import { instant } from '../model/time.js';
import { taxonName } from '../taxa/taxon-name.js';
import { SetFits } from './composition.js';
import { flocksOf, mergeParts, type Flock, type Part } from './flock.js';
import type { LogNumber } from './flock-size.js';
import { matchObservers } from './match-observers.js';
import { totalsOf, flocksInTotal } from './totals.js';
import { Waterbody } from './whereabouts.js';

/** One flock in one place: one observer's record of it, or several matched to one another. */
export interface FlockSighting {
  /** Ids of all its lines, sorted, joined by `+`. */
  readonly key: string;
  readonly cell: string;
  readonly window: string;
  /** Section ids it was in, sorted: one, unless the tallies do not say which. */
  readonly sections: readonly string[];
  /** How many flocks it stands for: 1, or more where it is the undivided total of a section. */
  readonly holds: number;
  readonly isTotal: boolean;
  /** At most one from each tally, sorted by key. */
  readonly flocks: readonly Flock[];
  readonly size: LogNumber;
  /** Numbers are shares of the flock, averaged over observers. */
  readonly parts: readonly Part[];
  /** As results show it. */
  readonly sighting: Sighting;
}

/**
 * The flocks seen in every cell, each once: flocks of birds using the waterbody that observers of
 * the same cell recorded are matched first, so that a raft seen by two observers is one sighting. Numbers
 * of a section that nothing divides into flocks are sightings too (`totals.ts`).
 * Sorted by key.
 *
 * @param cellOf the id of the cell that a tally belongs to
 * @param known rafts of cells, where `raftsOf` has found them before
 */
export function sightingsOf(
  snapshot: Snapshot,
  cellOf: (tally: Tally) => string,
  protocol: Protocol,
  known: RaftsByCell = new Map(),
): FlockSighting[] {
  const waterbody = new Waterbody(snapshot);
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  const setFits = new SetFits(lookAlikes);
  const found = snapshot.windows
    .flatMap((window) => {
      const tallies = snapshot.tallies
        .filter((tally) => tally.window === window.id)
        .toSorted((a, b) => (a.id < b.id ? -1 : 1));
      const cells = [...new Set(tallies.map(cellOf))].toSorted();
      return cells.flatMap((cell) => {
        const own = tallies.filter((tally) => cellOf(tally) === cell);
        const rafts = known.get(cell) ?? raftsOf(own, window, waterbody, lookAlikes, protocol);
        const totals = totalsOf(own, rafts.flat(), window, waterbody, setFits, protocol);
        return [
          ...rafts.map((flocks) => sightingFrom(cell, flocks, waterbody, false)),
          ...totals.map((flocks) => sightingFrom(cell, flocks, waterbody, true)),
        ];
      });
    })
    .toSorted((a, b) => (a.key < b.key ? -1 : 1));
  return withHolds(found);
}

/** Totals by how many flocks of this count's usual size they have birds for. */
function withHolds(sightings: readonly FlockSighting[]): FlockSighting[] {
  const flocks = sightings.filter(({ isTotal }) => !isTotal);
  const logs = flocks.reduce((sum, { size }) => sum + size.mean, 0);
  const usual = flocks.length === 0 ? null : Math.exp(logs / flocks.length);
  return sightings.map((each) =>
    each.isTotal ? { ...each, holds: flocksInTotal(each.sighting.number, usual) } : each,
  );
}

/** Flocks of a cell, each with its record by every observer who has one. */
export type Rafts = readonly (readonly Flock[])[];
export type RaftsByCell = ReadonlyMap<string, Rafts>;

/** The flocks that the tallies of one cell recorded, matched between observers. */
export function raftsOf(
  tallies: readonly Tally[],
  window: CountWindow,
  waterbody: Waterbody,
  lookAlikes: LookAlikes,
  protocol: Protocol,
): Rafts {
  const byTally = tallies
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map((tally) => flocksOf(tally, window, protocol));
  return matchObservers(byTally, waterbody, new SetFits(lookAlikes));
}

function sightingFrom(
  cell: string,
  unsorted: readonly Flock[],
  waterbody: Waterbody,
  isTotal: boolean,
): FlockSighting {
  const flocks = unsorted.toSorted((a, b) => (a.key < b.key ? -1 : 1));
  const lines = flocks.flatMap((flock) => flock.lines).toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const ids = lines.map((line) => line.id);
  const position = middleOf(flocks.flatMap((flock) => (flock.position ? [flock.position] : [])));
  const sections = sectionsOf(flocks, position, waterbody);
  const candidates = candidatesOf(flocks);
  const mean = flocks.reduce((sum, flock) => sum + flock.number, 0) / flocks.length;
  const number = Math.round(mean);
  const variance = flocks.reduce((sum, flock) => sum + flock.logVariance, 0) / flocks.length ** 2;
  return {
    key: ids.join('+'),
    cell,
    window: flocks[0]?.tally.window ?? '',
    sections,
    holds: 1,
    isTotal,
    flocks,
    size: { mean: Math.log(mean), variance },
    parts: mergeParts(
      flocks.flatMap((flock) =>
        flock.parts.map((part) => ({
          candidates: part.candidates,
          number: part.number / flock.number / flocks.length,
        })),
      ),
    ),
    sighting: {
      cell,
      section: sections.join('+'),
      lines: ids,
      observers: [...new Set(flocks.map((flock) => flock.tally.observer))].toSorted(),
      taxon: taxonName(candidates),
      candidates,
      number,
      ...timesOf(flocks),
      position,
    },
  };
}

/** The sections that all its tallies name; the one that its position lies in, if these are several. */
function sectionsOf(
  flocks: readonly Flock[],
  position: Position | null,
  waterbody: Waterbody,
): readonly string[] {
  const named = flocks.map((flock) => flock.tally.sections);
  const shared = named.reduce(intersection);
  const possible = shared.length > 0 ? shared : named.reduce(union);
  if (position === null || possible.length === 1) return possible;
  const inside = waterbody.sectionsAt(position, possible);
  return inside.length > 0 ? inside : possible;
}

/** A mixed raft may be any of its parts; observers of one raft narrow each other where they can. */
function candidatesOf(flocks: readonly Flock[]): readonly string[] {
  const sets = flocks.map((flock) => flock.parts.map((part) => part.candidates).reduce(union));
  const shared = sets.reduce(intersection);
  return shared.length > 0 ? shared : sets.reduce(union);
}

function middleOf(positions: readonly Position[]): Position | null {
  if (positions.length === 0) return null;
  const sorted = positions.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const lon = sorted.reduce((sum, position) => sum + position[0], 0) / sorted.length;
  const lat = sorted.reduce((sum, position) => sum + position[1], 0) / sorted.length;
  return [Number(lon.toFixed(6)), Number(lat.toFixed(6))];
}

/** First and last time as observers wrote them; their tallies' where no line notes a time. */
function timesOf(flocks: readonly Flock[]): { start: string | null; end: string | null } {
  const noted = flocks.flatMap((flock) => flock.lines.map((line) => line.time));
  const spans = flocks.flatMap((flock) => [flock.tally.start, flock.tally.end]);
  const written = noted.some((time) => time !== null) ? noted : spans;
  const sorted = written
    .filter((time) => time !== null)
    .toSorted((a, b) => (instant(a) ?? 0) - (instant(b) ?? 0) || (a < b ? -1 : a > b ? 1 : 0));
  return { start: sorted[0] ?? null, end: sorted.at(-1) ?? null };
}
