import { joined, say, type Saying } from '../model/saying.js';
import { chanceOf } from './looks.js';
import { meanError } from './position-error.js';
import { sameSpotDensity, stayChance } from './routes.js';
import { kilometresText } from './route-text.js';
import type { Route, Setting } from './route.js';
import type { Seen } from './seen.js';
import { PAST_THE_LINE } from './shared-water.js';
import { mayMeet, type Waterbody } from './whereabouts.js';

type Place = NonNullable<Seen['place']>;

/** A flock seen on its way is seldom found at rest in the same place. No source. */
const SEEN_ON_ITS_WAY = -1.2;

/** Below this a route is as good as impossible. */
const LEAST = 1e-6;

/**
 * One flock that stayed where it was and was put into both tallies, against two flocks of which each is in
 * the one only: flocks lie so many to the km², and at each place it is asked how likely just these
 * observers of the one section, and just those of the other, are to have it. Where both places are known,
 * their distance is held against the errors of both.
 */
export function stayed(a: Seen, b: Seen, setting: Setting): Route | null {
  const { waterbody, protocol, flocksIn } = setting;
  if (!mayMeet(a.reach, b.reach)) return null;
  const [first, second] =
    a.middle < b.middle || (a.middle === b.middle && a.index < b.index) ? [a, b] : [b, a];
  const hours = minutesBetween(first, second) / 60;
  const near = meetingRatio(first, second, hours, 0, setting) ?? 0;
  const shared = meetingRatio(first, second, hours, PAST_THE_LINE, setting);
  if (shared === null) return null;
  const isPlaced = first.place !== null && second.place !== null;
  const area = (a.area + b.area) / 2;
  const flocks = ((flocksIn.get(a.sighting.cell) ?? 1) + (flocksIn.get(b.sighting.cell) ?? 1)) / 2;
  const ratio = shared * area * stayChance(hours, protocol);
  if (ratio < LEAST) return null;
  const travel = Math.log(ratio);
  const alternatives = 0 - Math.log(flocks);
  const heading = a.isOnItsWay || b.isOnItsWay ? SEEN_ON_ITS_WAY : 0;
  return {
    kind: 'overlap',
    isPlaced,
    isStated: false,
    pastTheLine: isPlaced ? pastIfPlaced(first, second, setting) : Math.max(0, 1 - near / shared),
    first,
    second,
    logOdds: travel + alternatives + heading,
    evidence: () => [
      { name: 'travel', text: textOf(first, second, waterbody), weight: travel },
      ...(heading === 0
        ? []
        : [
            {
              name: 'heading' as const,
              text: say('seen on its way, so hardly at rest'),
              weight: heading,
            },
          ]),
      {
        name: 'alternatives',
        text: say('the sections have {number} flocks on average', {
          number: Number(flocks.toFixed(1)),
        }),
        weight: alternatives,
      },
    ],
  };
}

/** Between the middles of both, as far as these are known. */
function minutesBetween(first: Seen, second: Seen): number {
  return Math.max(0, second.middle - first.middle);
}

/** Odds of one flock against two, were there one flock to the km²; per km². `null` if there are none. */
function meetingRatio(
  first: Seen,
  second: Seen,
  hours: number,
  past: number,
  { shared }: Setting,
): number | null {
  const found = (first.found + second.found) / 2;
  const chanceIn = (at: Place, seen: Seen): number =>
    found * shared.chanceInTally(at.point, seen, past);
  if (first.place !== null && second.place !== null) {
    const density = sameSpotDensity(first.place, second.place, hours);
    const [inSecond, inFirst] = [chanceIn(first.place, second), chanceIn(second.place, first)];
    // One so near the line that it would mostly be in both tallies is hardly in one only.
    const apart = (1 - inSecond) ** second.seenBy.of * (1 - inFirst) ** first.seenBy.of;
    return inSecond === 0 || inFirst === 0 ? null : density / apart;
  }
  const odds = shared.odds(first, second, found, past);
  if (odds.both === 0) return null;
  const placed = first.place ?? second.place;
  if (placed === null) return odds.both / (odds.onlyA * odds.onlyB);
  const [other, only] = first.place === null ? [first, odds.onlyA] : [second, odds.onlyB];
  const inOther = chanceIn(placed, other);
  const ratio = chanceOf(other.seenBy, inOther) / (1 - inOther) ** other.seenBy.of / only;
  return ratio === 0 ? null : ratio;
}

/** How likely it is, where both places are known, that one of the observers tallied past the line. */
function pastIfPlaced(first: Seen, second: Seen, { shared }: Setting): number {
  const chances = (past: number): number =>
    [first, second].reduce((product, { place }) => {
      if (place === null) return product;
      const both = [first, second].map((seen) =>
        chanceOf(seen.seenBy, seen.found * shared.chanceInTally(place.point, seen, past)),
      );
      return both.reduce((sum, chance) => sum * chance, product);
    }, 1);
  const all = chances(PAST_THE_LINE);
  return all === 0 ? 1 : Math.max(0, 1 - Math.sqrt(chances(0) / all));
}

function textOf(
  { place: from, ground }: Seen,
  { place: to, ground: other }: Seen,
  waterbody: Waterbody,
): Saying {
  if (from === null || to === null) {
    const named = ({ sections }: Seen['ground']): Saying =>
      joined(
        sections.map((section) => waterbody.nameOf(section)),
        ' + ',
      );
    return say(
      'position not noted: it may have lain where {one} meets {two} and be in both tallies',
      { one: named(ground), two: named(other) },
    );
  }
  const apart = Math.hypot(to.point[0] - from.point[0], to.point[1] - from.point[1]);
  const error = Math.hypot(meanError(from.variance), meanError(to.variance));
  const length = kilometresText([apart]);
  return apart <= 2 * error
    ? say(
        '{length} apart, within the error of both positions: one flock that stayed and is in both tallies',
        { length },
      )
    : say(
        '{length} apart, further than positions err: one flock that stayed and is in both tallies',
        { length },
      );
}
