import type { Chance } from './chance.js';
import {
  BEARING_ERROR_DEGREES,
  DETECTION_AT_KM,
  DETECTION_PER_KM,
  DISTANCE_ERROR,
  LEAVES_COARSE,
} from './model.js';
import type { Place } from './lake.js';
import type { SimulationOptions } from './options.js';

export const HABITS = ['careful', 'quick', 'sampling'] as const;
/** How somebody counts, see `model.ts`. */
export type Habit = (typeof HABITS)[number];

export interface Observer {
  readonly id: string;
  readonly habit: Habit;
  /** Median of what this observer writes for each true bird, where counting errs at all. */
  readonly ratio: number;
  /** Share of birds that are hard to tell apart which are left at the pair. */
  readonly leavesCoarse: number;
  /** Tallies every flock in view, wherever it lies. */
  readonly pastTheLine: boolean;
}

export function observerId(number: number): string {
  return `o${number + 1}`;
}

/**
 * With mixed methods the habits take turns, so that neighbours at a section differ.
 *
 * @param forLines draws who tallies past the line, without moving what `chance` draws
 */
export function observersFor(
  options: SimulationOptions,
  chance: Chance,
  forLines: Chance,
): Observer[] {
  const spread = Math.sqrt(Math.log1p(options.observerSpread ** 2));
  return Array.from({ length: options.observers }, (_, number) => ({
    id: observerId(number),
    habit: options.methods === 'usual' ? 'careful' : (HABITS[number % HABITS.length] ?? 'careful'),
    ratio: options.bias * Math.exp(spread * chance.normal()),
    leavesCoarse: Math.min(1, options.leftCoarse * chance.between(...LEAVES_COARSE)),
    pastTheLine: forLines.happens(options.pastTheLine),
  }));
}

/** Chance that birds of one species at one distance are found at all. */
export function chanceToFind(birds: number, kilometres: number, pairAtHalf: number): number {
  if (pairAtHalf >= 1) return 1;
  const logit =
    Math.log(pairAtHalf / (1 - pairAtHalf)) +
    Math.log(birds / 2) +
    DETECTION_PER_KM * (kilometres - DETECTION_AT_KM);
  return 1 / (1 + Math.exp(-logit));
}

/** Where birds seem to be, seen from a vantage point. */
export function seemingPlace(place: Place, from: Place, placing: number, chance: Chance): Place {
  const [east, north] = [place.east - from.east, place.north - from.north];
  const distance = Math.hypot(east, north) * (1 + placing * DISTANCE_ERROR * chance.normal());
  const turn = placing * BEARING_ERROR_DEGREES * (Math.PI / 180) * chance.normal();
  const bearing = Math.atan2(east, north) + turn;
  return {
    east: from.east + distance * Math.sin(bearing),
    north: from.north + distance * Math.cos(bearing),
  };
}
