import { largestRemainder } from '../math/largest-remainder.js';
import type { Chance } from './chance.js';
import type { Place } from './lake.js';
import { FLYING_KMH, LEAVING_IN_PART, SHARE_LEAVING, SWIMMING_KMH } from './model.js';
import type { Flock, Part } from './population.js';

/**
 * The same birds, but of a share of the moving flocks only a part moves, or they join another. A part
 * that leaves is a flock of its own, numbered after all others; what stays keeps the number.
 */
export function withSplits(flocks: readonly Flock[], share: number, chance: Chance): Flock[] {
  const all = [...flocks];
  flocks.forEach((flock, index) => {
    if (flock.moves === 'stays') return;
    const own = chance.split();
    if (!own.happens(share)) return;
    if (own.happens(LEAVING_IN_PART)) {
      const [staying, leaving] = divided(flock.parts, own);
      if (staying.length === 0 || leaving.length === 0) return;
      all[index] = { ...flock, parts: staying, moves: 'stays', end: flock.start };
      const company = { flock: flock.number, from: 0, until: flock.leaves };
      all.push({ ...flock, number: all.length, parts: leaving, company });
    } else {
      all[index] = joined(flock, flocks, own);
    }
  });
  return all;
}

/** A share of the birds, the same of every species as near as whole birds allow. */
function divided(parts: readonly Part[], chance: Chance): [staying: Part[], leaving: Part[]] {
  const birds = parts.map((part) => part.birds);
  const all = birds.reduce((sum, each) => sum + each, 0);
  const numbers = largestRemainder(Math.round(all * chance.between(...SHARE_LEAVING)), birds);
  const leaving = parts.map((part, index): Part => {
    const leave = numbers[index] ?? 0;
    const { males } = part;
    return {
      ...part,
      birds: leave,
      males: males === null ? null : Math.round((males * leave) / part.birds),
    };
  });
  const staying = parts.map((part, index): Part => {
    const { birds: gone = 0, males: malesGone = null } = leaving[index] ?? {};
    const males = part.males === null ? null : part.males - (malesGone ?? 0);
    return { ...part, birds: part.birds - gone, males };
  });
  return [staying.filter((part) => part.birds > 0), leaving.filter((part) => part.birds > 0)];
}

/** It goes on to the nearest flock that stays and has one of its species, if there is one. */
function joined(flock: Flock, flocks: readonly Flock[], chance: Chance): Flock {
  const species = new Set(flock.parts.map((part) => part.species));
  const kilometresTo = (place: Place): number => between(flock.end, place);
  const [host] = flocks
    .filter(
      ({ moves, parts }) => moves === 'stays' && parts.some((part) => species.has(part.species)),
    )
    .sort((one, other) => kilometresTo(one.start) - kilometresTo(other.start));
  if (host === undefined) return flock;
  const speed = flock.moves === 'flies' ? FLYING_KMH : chance.between(...SWIMMING_KMH);
  const arrives = flock.leaves + between(flock.start, host.start) / speed;
  const company = { flock: host.number, from: arrives, until: Infinity };
  return { ...flock, end: host.start, arrives, company };
}

function between(one: Place, other: Place): number {
  return Math.hypot(one.east - other.east, one.north - other.north);
}
