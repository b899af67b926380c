import { vonMisesLogDensity } from '../math/von-mises.js';
import type { Leg } from './whereabouts.js';

/**
 * What observers said about where a flock was going, as log-likelihood ratios.
 * All constants of this file are common practice, no source.
 */

/** Concentration of headings about the way a flock takes (κ = 4: about 30° either side). */
const LEAVING_CONCENTRATION = 4;
/** A flock that has arrived keeps its heading less well. */
const ARRIVED_CONCENTRATION = 2;
/** Flocks that turn, or whose heading was of the moment only. */
const TURNS = 0.2;

/** A section named as the one that birds went to, or came from, is the right one: about 50 to 1. */
export const STATED_SECTION = 4;
/** It is another one: the birds may have gone on, or the observer may err. */
const STATED_ELSEWHERE = -3;
/** A flock like it was seen flying from the one section to the other in between: about 20 to 1. */
export const SEEN_FLYING = 3;
/** Flocks that have arrived from elsewhere are seen on their way more often than others: 5 to 1. */
export const SEEN_MOVING = 1.6;
/** Who counted both sections would mostly have noticed that it was one flock. */
export const SAME_OBSERVER = -0.7;

/**
 * How much a heading speaks for the way from one place to another, against any direction alike:
 * von Mises about the bearing, averaged over where the flock may have been, so that it says little
 * where the bearing is not known well.
 *
 * @param heading degrees from true north
 * @param error spread of the leg's length, km: at short range it blurs the bearing
 */
export function headingLogRatio(
  heading: number,
  legs: readonly Leg[],
  error: number,
  when: 'leaving' | 'arrived',
): number {
  const concentration = when === 'leaving' ? LEAVING_CONCENTRATION : ARRIVED_CONCENTRATION;
  const fits = legs.map(({ kilometres, bearing }) => {
    const blur = error / Math.max(kilometres, error / 10);
    const blurred = 1 / (1 / concentration + blur ** 2);
    return 2 * Math.PI * Math.exp(vonMisesLogDensity(heading - bearing, blurred));
  });
  const fit = fits.reduce((sum, value) => sum + value, 0) / fits.length;
  return Math.log(TURNS + (1 - TURNS) * fit);
}

/**
 * @param named section ids that the flock is said to have gone to (or come from)
 * @param own sections it was seen in: naming these says nothing
 * @param other sections of the other sighting
 * @returns `null` if nothing was stated
 */
export function statedLogRatio(
  named: readonly string[],
  own: readonly string[],
  other: readonly string[],
): number | null {
  if (named.length === 0) return null;
  const away = named.filter((section) => !own.includes(section));
  if (away.length === 0) return null;
  return away.some((section) => other.includes(section)) ? STATED_SECTION : STATED_ELSEWHERE;
}
