import type { Protocol } from '../model/protocol.js';
import type { Point } from '../math/local-plane.js';
import { addVariance, densityOfError, roundError, type Variance } from './position-error.js';
import type { Leg } from './whereabouts.js';

/**
 * How a flock seen in one place comes to be seen in another. Each answer is a density per square
 * kilometre: of finding the flock there, given where it was seen before. Held against the density
 * of other flocks, it says how much nearness in space and time speaks for one flock.
 * All constants of this file are common practice, no source.
 */

/** What a flock was doing when last seen. */
export type Doing = 'water' | 'land' | 'flushed' | 'leaving';

/** Of those that move, how they go; the rest leave the waterbody. */
const GOES: Readonly<Record<Doing, { swims: number; flies: number }>> = {
  water: { swims: 0.65, flies: 0.3 },
  land: { swims: 0.4, flies: 0.5 },
  flushed: { swims: 0.1, flies: 0.6 },
  leaving: { swims: 0.9, flies: 0.05 },
};

/** How far a flock at rest drifts in an hour, km (standard deviation along each axis). */
const DRIFT = 0.1;

/** Watches and noted times differ by about this. */
const CLOCK_HOURS = 1 / 60;

/** A flock at rest stays for about this long before it flies. */
const STAY_HOURS = 0.5;

/** The range of flying speeds is tried in so many steps. */
const SPEEDS = 3;

/** Flocks that swim over to another place seldom take longer. */
const SWIM_HOURS = 1.5;

/** Chance that a flock at rest is still there. */
export function stayChance(hours: number, { movingPerHour }: Protocol): number {
  return Math.exp(-movingPerHour * Math.abs(hours));
}

/**
 * Density at the end of a leg of a flock that moved there, per km².
 *
 * Swimming, it is within reach at the protocol's fastest swimming speed, every distance up to that as
 * likely, the edge blurred by the error of the positions; seen at the same time it has not moved, and
 * is a case for `sameSpotDensity`. Flying, it is anywhere on the waterbody, if there was time for the
 * flight; unless it was flushed when last seen, it first rested, and as flights begin at any time, a
 * short rest is unlikely. So a mean speed between swimming and flying is no obstacle: the flock flew
 * and rested.
 *
 * @param hours from the last sighting in the first place to the first in the second
 * @param error of the leg's length in any direction, km
 * @param waterbodyArea km²
 */
export function movedDensity(
  kilometres: number,
  hours: number,
  error: number,
  doing: Doing,
  waterbodyArea: number,
  protocol: Protocol,
): number {
  const time = hours + CLOCK_HOURS;
  if (time <= 0 || hours < 0) return 0;
  const moves = doing === 'water' || doing === 'land' ? 1 - stayChance(hours, protocol) : 1;
  const { swims, flies } = GOES[doing];
  const reach = protocol.swimmingMaxKmh * Math.min(time, SWIM_HOURS);
  const beyond = Math.max(0, kilometres - reach) / error;
  const hadTime = hours / (hours + error / protocol.swimmingMaxKmh);
  const around = 2 * Math.PI * Math.max(kilometres, error) * (reach + error);
  const swimming = (hadTime * Math.exp(-(beyond ** 2) / 2)) / around;
  const flying = hadTimeToFly(kilometres, time, error, doing, protocol) / waterbodyArea;
  return moves * (swims * swimming + flies * flying);
}

/**
 * No less than {@link movedDensity} over any way at least so long, in any time at most so long: all that
 * grows with time is taken at its end, and the ring of a swimming flock no wider than it must be.
 */
export function movedDensityAtMost(
  kilometres: number,
  hours: number,
  error: number,
  doing: Doing,
  waterbodyArea: number,
  protocol: Protocol,
): number {
  const moves = doing === 'water' || doing === 'land' ? 1 - stayChance(hours, protocol) : 1;
  const { swims, flies } = GOES[doing];
  const reach = protocol.swimmingMaxKmh * Math.min(hours + CLOCK_HOURS, SWIM_HOURS);
  const beyond = Math.max(0, kilometres - reach) / error;
  // A reach of half the way or less is as far beyond; a longer one has a ring of half the way at least.
  const half = kilometres / 2;
  const blurred = Math.max(1 / (half + error), Math.exp(-((half / error) ** 2) / 2) / error);
  const ring = Math.min(blurred, Math.exp(-(beyond ** 2) / 2) / error);
  return (
    moves * ((swims * ring) / (2 * Math.PI * Math.max(kilometres, error)) + flies / waterbodyArea)
  );
}

/** Whether a swimming flock covers a leg in the time, positions and clocks being what they are. */
export function isSwum(leg: Leg, hours: number, error: number, protocol: Protocol): boolean {
  return leg.kilometres - error <= protocol.swimmingMaxKmh * (hours + CLOCK_HOURS);
}

/** Chance that a flight of this length fits, over the protocol's range of speeds. */
function hadTimeToFly(
  kilometres: number,
  time: number,
  error: number,
  doing: Doing,
  { flyingMinKmh, flyingMaxKmh }: Protocol,
): number {
  const far = Math.max(0, kilometres - error);
  let sum = 0;
  for (let step = 0; step < SPEEDS; step += 1) {
    const speed = flyingMinKmh + ((flyingMaxKmh - flyingMinKmh) * step) / (SPEEDS - 1);
    const rest = time - far / speed;
    if (rest >= 0) sum += doing === 'flushed' ? 1 : Math.min(1, rest / STAY_HOURS);
  }
  return sum / SPEEDS;
}

/** A place and how well it is known. */
export interface Placed {
  readonly point: Point;
  readonly variance: Variance;
}

/**
 * Density of a flock at rest at the second place, per km²: about where it was seen before, as wide as
 * the errors of both places and its drift.
 *
 * @param hours between the two sightings, either way
 */
export function sameSpotDensity(from: Placed, to: Placed, hours: number): number {
  const drift = roundError(DRIFT * Math.sqrt(Math.abs(hours)));
  const variance = addVariance(addVariance(from.variance, to.variance), drift);
  return densityOfError([to.point[0] - from.point[0], to.point[1] - from.point[1]], variance);
}
