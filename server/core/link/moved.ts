import type { LinkEvidence } from '../model/result.js';
import type { SeenBy } from './looks.js';
import type { Flock } from './flock.js';
import { flightBetween } from './flown.js';
import { legText } from './route-text.js';
import type { Route, Setting } from './route.js';
import type { Seen } from './seen.js';
import type { FlockSighting } from './sightings.js';
import {
  SEEN_FLYING,
  SEEN_MOVING,
  STATED_SECTION,
  headingLogRatio,
  statedLogRatio,
} from './stated.js';
import type { Leg, Waterbody } from './whereabouts.js';

/** Below this density × area a route is as good as impossible. */
const LEAST_DENSITY = 1e-6;

/**
 * Who looked over the same section at another moment and has no such flock: it may have come or gone in
 * between. Each observer misses a flock at rest one time in ten. Of one that moved, the more observers the
 * likelier it is that some have it not: a quarter for each, as if never two at once, and four fifths at
 * most (common practice, no source).
 */
const MISSED_AT_REST = 0.1;
const MISSED_MOVING = 0.25;
const MOST_MISSED = 0.8;

/** What is noted of a move adds this much at most: headings, a stated section, birds seen flying. */
const MOST_FROM_NOTES = 12;

/**
 * One flock that was seen first as `first`, moved, and was seen again as `second`.
 *
 * @param least log odds that the way must be able to reach; `null` if it cannot
 */
export function moved(first: Seen, second: Seen, least: number, setting: Setting): Route | null {
  const { waterbody, journeys } = setting;
  if ((second.came.at(-1) ?? 0) < (first.left[0] ?? 0)) return null;
  const [from, to] = [first.lastAt, second.firstAt];
  const near = journeys.density(from, to, first.left, second.came, first.doing);
  const density = near * second.area;
  if (density < LEAST_DENSITY) return null;
  const noted = first.isOnItsWay || second.isOnItsWay || setting.flights.length > 0;
  const most = Math.log(density) + 2 + (noted ? MOST_FROM_NOTES : 0);
  if (most < least) return null;
  const error = journeys.error(from, to);
  const legs = noted ? journeys.legs(from, to) : [];
  const others = setting.flocksIn.get(second.sighting.cell) ?? 1;
  const words = [
    ...headings(first.sighting.flocks, legs, error, 'leaving'),
    ...headings(second.sighting.flocks, legs, error, 'arrived'),
    ...stated(first.sighting, second.sighting, waterbody),
    ...seenFlying(first, second, setting),
    ...missed('first', first.seenBy),
    ...missed('later', second.seenBy),
  ];
  const travel = Math.log(density);
  const alternatives = 0 - Math.log(others);
  return {
    kind: 'movement',
    isPlaced: false,
    isStated: words.some(({ weight }) => weight === STATED_SECTION),
    pastTheLine: 0,
    first,
    second,
    logOdds: words.reduce((sum, { weight }) => sum + weight, travel + alternatives),
    evidence: () => [
      { name: 'travel', text: travelText(first, second, setting), weight: travel },
      ...words,
      {
        name: 'alternatives',
        text: alternativesText(others, named(second.sighting, waterbody)),
        weight: alternatives,
      },
    ],
  };
}

function travelText(first: Seen, second: Seen, { journeys, protocol }: Setting): string {
  const [from, to] = [first.lastAt, second.firstAt];
  const hours = second.came.flatMap((came) => first.left.map((left) => (came - left) / 60));
  return legText(journeys.legs(from, to), hours, journeys.error(from, to), protocol);
}

function alternativesText(others: number, place: string): string {
  return others === 1
    ? `it is the only flock that was followed in ${place}`
    : `it is one of ${others} flocks in ${place}`;
}

function seenFlying(
  { sighting: first }: Seen,
  { sighting: second }: Seen,
  setting: Setting,
): LinkEvidence[] {
  const flight = flightBetween(first, second, setting.flights, setting.lookAlikes);
  if (flight === null) return [];
  const text = `${flight.number} such birds were seen flying from ${named(first, setting.waterbody)} to ${named(second, setting.waterbody)}`;
  return [{ name: 'seen-flying', text, weight: SEEN_FLYING }];
}

function missed(whose: 'first' | 'later', { saw, of }: SeenBy): LinkEvidence[] {
  if (of < 2) return [];
  const text =
    saw < of
      ? `${whose} seen by ${saw} of ${of} observers of the section`
      : `${whose} seen by all ${of} observers of the section`;
  const [atRest, moving] = [
    1 - (1 - MISSED_AT_REST) ** of,
    Math.min(MOST_MISSED, MISSED_MOVING * of),
  ];
  const weight = saw < of ? Math.log(moving / atRest) : Math.log((1 - moving) / (1 - atRest));
  return [{ name: 'seen-by', text, weight }];
}

/** One heading counts in full; several of one flock are one observation, so they are averaged. */
function headings(
  flocks: readonly Flock[],
  legs: readonly Leg[],
  error: number,
  when: 'leaving' | 'arrived',
): LinkEvidence[] {
  const noted = flocks.map((flock) => flock.heading).filter((heading) => heading !== null);
  if (noted.length === 0 || legs.length === 0) return [];
  const ratios = noted.map((heading) => headingLogRatio(heading, legs, error, when));
  const fit = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  // That the first was leaving is in its way already; of the second, it makes a move likelier.
  const weight = fit + (when === 'arrived' ? SEEN_MOVING : 0);
  const whose = when === 'leaving' ? 'first seen heading' : 'later seen heading';
  const fits = fit > 0 ? 'which fits the way' : 'which does not fit the way';
  const degrees = [...new Set(noted)].toSorted((a, b) => a - b).join('° and ');
  const way = legs.length === 1 ? ` (${Math.round(legs[0]?.bearing ?? 0)}°)` : '';
  return [{ name: 'heading', text: `${whose} ${degrees}°, ${fits}${way}`, weight }];
}

function stated(first: FlockSighting, second: FlockSighting, waterbody: Waterbody): LinkEvidence[] {
  const gone = [...new Set(first.flocks.flatMap((flock) => flock.to))].toSorted();
  const come = [...new Set(second.flocks.flatMap((flock) => flock.from))].toSorted();
  const names = (sections: readonly string[]): string =>
    sections.map((section) => waterbody.nameOf(section)).join(' and ');
  const evidence: LinkEvidence[] = [];
  const went = statedLogRatio(gone, first.sections, second.sections);
  if (went !== null) {
    evidence.push({ name: 'stated', text: `reported as going to ${names(gone)}`, weight: went });
  }
  const came = statedLogRatio(come, second.sections, first.sections);
  if (came !== null) {
    evidence.push({ name: 'stated', text: `reported as coming from ${names(come)}`, weight: came });
  }
  return evidence;
}

function named(sighting: FlockSighting, waterbody: Waterbody): string {
  return sighting.sections.map((section) => waterbody.nameOf(section)).join(' + ');
}
