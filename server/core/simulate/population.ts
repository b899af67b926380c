import { largestRemainder } from '../math/largest-remainder.js';
import type { Species } from '../model/snapshot.js';
import type { Chance } from './chance.js';
import {
  FLOCK_KINDS,
  MALE_SHARE,
  PASSING_KINDS,
  SHARE_SPREAD,
  type FlockKind,
} from './flock-kinds.js';
import { type Lake, type Place, sectionId, WINDOW_HOURS } from './lake.js';
import {
  FLYING_KMH,
  PASSING_SHARE,
  SECTION_DEPTH,
  SWIMMING_HOURS,
  SWIMMING_KMH,
  SWIMMING_SHARE,
} from './model.js';

/** Birds of one species in a flock. */
export interface Part {
  readonly species: Species;
  readonly birds: number;
  /** `null` where the sexes cannot be told apart in the field. */
  readonly males: number | null;
}

/** A true flock: what it is, and where it is when. Hours from the start of the window. */
export interface Flock {
  readonly number: number;
  readonly parts: readonly Part[];
  readonly moves: 'stays' | 'swims' | 'flies';
  readonly start: Place;
  readonly end: Place;
  readonly leaves: number;
  readonly arrives: number;
  /** The flock that it is one with for a while: it came out of it, or joined it. */
  readonly company: Company | null;
}

/** From one hour to another, to the number of a flock that stays. */
interface Company {
  readonly flock: number;
  readonly from: number;
  readonly until: number;
}

/** Birds that fly over a section and do not use the lake. */
export interface PassingFlock {
  readonly species: Species;
  readonly birds: number;
  readonly section: string;
  readonly hour: number;
}

/** Flocks with exactly so many birds together; the last is cut to fit. */
export function flocksFor(birds: number, moving: number, lake: Lake, chance: Chance): Flock[] {
  const flocks: Flock[] = [];
  for (let left = birds; left > 0;) {
    const kind = kindFrom(FLOCK_KINDS, chance);
    const size = Math.min(left, sizeOf(kind, chance));
    left -= size;
    const parts = partsOf(kind, size, chance);
    const movement = movementOf(moving, lake, chance);
    flocks.push({ number: flocks.length, parts, ...movement, company: null });
  }
  return flocks;
}

export function passingFlocks(flocks: number, sections: number, chance: Chance): PassingFlock[] {
  return Array.from({ length: Math.round(flocks * PASSING_SHARE) }, () => {
    const kind = kindFrom(PASSING_KINDS, chance);
    return {
      species: chance.oneOf(kind.species),
      birds: sizeOf(kind, chance),
      section: sectionId(Math.floor(chance.between(0, sections))),
      hour: chance.between(0, WINDOW_HOURS),
    };
  });
}

/** Where a flock is; `null` while it is in the air. */
export function placeOf(flock: Flock, hour: number): Place | null {
  if (hour <= flock.leaves) return flock.start;
  if (hour >= flock.arrives) return flock.end;
  if (flock.moves === 'flies') return null;
  const share = (hour - flock.leaves) / (flock.arrives - flock.leaves);
  return {
    east: flock.start.east + share * (flock.end.east - flock.start.east),
    north: flock.start.north + share * (flock.end.north - flock.start.north),
  };
}

function kindFrom(kinds: readonly FlockKind[], chance: Chance): FlockKind {
  return chance.oneOf(kinds.map((kind) => [kind.weight, kind] as const));
}

function sizeOf({ medianSize, spread }: FlockKind, chance: Chance): number {
  return Math.max(1, Math.round(medianSize * Math.exp(spread * chance.normal())));
}

function partsOf({ species, mixed }: FlockKind, size: number, chance: Chance): Part[] {
  const drawn = mixed
    ? species.map(
        ([share, name]) => [share * Math.exp(SHARE_SPREAD * chance.normal()), name] as const,
      )
    : [[1, chance.oneOf(species)] as const];
  const numbers = largestRemainder(
    size,
    drawn.map(([share]) => share),
  );
  return drawn
    .map(([, name], index) => ({ species: name, birds: numbers[index] ?? 0 }))
    .filter(({ birds }) => birds > 0)
    .map((part) => {
      const share = MALE_SHARE[part.species];
      return { ...part, males: share === undefined ? null : chance.binomial(part.birds, share) };
    });
}

function movementOf(
  moving: number,
  lake: Lake,
  chance: Chance,
): Pick<Flock, 'moves' | 'start' | 'end' | 'leaves' | 'arrives'> {
  const anywhere = (): Place => ({
    east: chance.between(0, lake.width),
    north: chance.between(0, SECTION_DEPTH),
  });
  const start = anywhere();
  const leaves = chance.between(0, WINDOW_HOURS);
  if (!chance.happens(moving))
    return { moves: 'stays', start, end: start, leaves, arrives: leaves };
  if (chance.happens(SWIMMING_SHARE)) {
    const hours = chance.between(...SWIMMING_HOURS);
    const far = hours * chance.between(...SWIMMING_KMH);
    const angle = chance.between(0, 2 * Math.PI);
    const end = lake.onWater({
      east: start.east + far * Math.sin(angle),
      north: start.north + far * Math.cos(angle),
    });
    return { moves: 'swims', start, end, leaves, arrives: leaves + hours };
  }
  const end = anywhere();
  const far = Math.hypot(end.east - start.east, end.north - start.north);
  return { moves: 'flies', start, end, leaves, arrives: leaves + far / FLYING_KMH };
}
