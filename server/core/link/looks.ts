import type { Tally } from '../model/snapshot.js';
import type { Flock } from './flock.js';
import { FLOCK_AT_LEAST } from './flock.js';
import type { FlockSighting } from './sightings.js';

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

/** Who looked where, and how often they find what is there. */
export class Looks {
  readonly #fullTallies: ReadonlyMap<string, number>;
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
    const full = new Map<string, number>();
    for (const tally of tallies.filter(({ coverage }) => coverage === 1)) {
      full.set(cellOf(tally), (full.get(cellOf(tally)) ?? 0) + 1);
    }
    this.#fullTallies = full;
    this.#found = {
      small: this.#foundOf('small', sightings),
      large: this.#foundOf('large', sightings),
    };
  }

  seenBy({ cell, flocks }: Pick<FlockSighting, 'cell' | 'flocks'>): SeenBy {
    const saw = new Set(flocks.map(({ tally }) => tally.id)).size;
    return { saw, of: Math.max(saw, this.#fullTallies.get(cell) ?? 1) };
  }

  /** How many looked over a cell. */
  lookedOver(cell: string): number {
    return this.#fullTallies.get(cell) ?? 1;
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
