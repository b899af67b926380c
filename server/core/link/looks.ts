import type { Species, Tally } from '../model/snapshot.js';
import type { Flock } from './flock.js';
import { FLOCK_AT_LEAST } from './flock.js';
import type { FlockSighting } from './sightings.js';
import { linesOfTotals } from './totals.js';

/** Of those who looked over a whole place, how many have a flock in their tally. */
export interface SeenBy {
  readonly saw: number;
  readonly of: number;
}

/**
 * How often one observer who looked has a flock that was there, by its size: what is usual (common
 * practice, no source), worth so many flocks beside what the count itself shows.
 */
const USUALLY_FOUND = { small: 0.75, large: 0.9 };
const WORTH_FLOCKS = 10;

type Size = keyof typeof USUALLY_FOUND;

/** Who looked over a whole place, and which species they gave only as a total of it. */
interface Looked {
  readonly tally: string;
  readonly inTotals: ReadonlySet<Species>;
}

/** Who looked where, and how often they find what is there. */
export class Looks {
  readonly #looked: ReadonlyMap<string, readonly Looked[]>;
  readonly #found: Readonly<Record<Size, number>>;

  /**
   * @param cellOf the id of the cell that a tally belongs to
   * @param sightings of the count, matched between observers
   */
  constructor(
    tallies: readonly Tally[],
    cellOf: (tally: Tally) => string,
    sightings: readonly FlockSighting[],
  ) {
    const looked = new Map<string, Looked[]>();
    for (const tally of tallies.filter(({ coverage }) => coverage === 1)) {
      const inTotals = new Set(
        [...linesOfTotals(tally).values()].flat().flatMap(({ candidates }) => candidates),
      );
      looked.set(cellOf(tally), [
        ...(looked.get(cellOf(tally)) ?? []),
        { tally: tally.id, inTotals },
      ]);
    }
    this.#looked = looked;
    this.#found = {
      small: this.#foundOf('small', sightings),
      large: this.#foundOf('large', sightings),
    };
  }

  /** Of a total nobody knows which of its flocks others have; and who gives a total may have any flock. */
  seenBy({ cell, flocks, isTotal, sighting }: FlockSighting): SeenBy {
    if (isTotal) return { saw: 1, of: 1 };
    const saw = new Set(flocks.map(({ tally }) => tally.id));
    const others = (this.#looked.get(cell) ?? []).filter(
      ({ tally, inTotals }) =>
        !saw.has(tally) && !sighting.candidates.some((species) => inTotals.has(species)),
    );
    return { saw: saw.size, of: saw.size + others.length };
  }

  /** How many looked over a cell. */
  lookedOver(cell: string): number {
    return this.#looked.get(cell)?.length ?? 1;
  }

  /** The chance that one who looked has a flock of this size. */
  found(sighting: FlockSighting): number {
    return this.#found[sizeOf(sighting)];
  }

  /** Of a flock that one observer has, how many of the others have it too. */
  #foundOf(size: Size, sightings: readonly FlockSighting[]): number {
    let [others, had] = [WORTH_FLOCKS, WORTH_FLOCKS * USUALLY_FOUND[size]];
    for (const sighting of sightings) {
      const { saw, of } = this.seenBy(sighting);
      if (of < 2 || sizeOf(sighting) !== size) continue;
      others += of - 1;
      had += saw - 1;
    }
    return Math.min(0.98, had / others);
  }
}

function sizeOf({ flocks }: { readonly flocks: readonly Flock[] }): Size {
  return flocks.some(({ number }) => number >= FLOCK_AT_LEAST) ? 'large' : 'small';
}

/** How likely it is that just these observers have it, if each has it with this chance. */
export function chanceOf({ saw, of }: SeenBy, chance: number): number {
  return chance ** saw * (1 - chance) ** (of - saw);
}
