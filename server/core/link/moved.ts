import type { LinkEvidence } from '../model/result.js';
import { joined, say, together, type Said, type Saying } from '../model/saying.js';
import type { SeenBy } from './looks.js';
import type { Flock } from './flock.js';
import { flightBetween, type Flight } from './flown.js';
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

/** A heading that fits adds this much at most: see `headingLogRatio`, and `SEEN_MOVING` of a later one. */
const MOST_FROM_LEAVING = 1.5;
const MOST_FROM_ARRIVED = 2.7;

/**
 * One flock that was seen first as `first`, moved, and was seen again as `second`.
 *
 * @param least log odds that the way must be able to reach; `null` if it cannot
 */
export function moved(first: Seen, second: Seen, least: number, setting: Setting): Route | null {
  const { waterbody, journeys } = setting;
  if ((second.came.at(-1) ?? 0) < (first.left[0] ?? 0)) return null;
  const [from, to] = [first.lastAt, second.firstAt];
  const others = setting.flocksIn.get(second.sighting.cell) ?? 1;
  const alternatives = 0 - Math.log(others);
  const flight = flightBetween(first.sighting, second.sighting, setting.flights, setting.setFits);
  const mostBesides =
    alternatives +
    (wentRatio(first, second) ?? 0) +
    (cameRatio(first, second) ?? 0) +
    (flight === null ? 0 : SEEN_FLYING) +
    missedRatio(first.seenBy) +
    missedRatio(second.seenBy) +
    (first.isHeaded ? MOST_FROM_LEAVING : 0) +
    (second.isHeaded ? MOST_FROM_ARRIVED : 0);
  const enough = Math.max(LEAST_DENSITY, Math.exp(least - mostBesides)) / second.area;
  const density =
    second.area * journeys.density(from, to, first.left, second.came, first.doing, enough);
  if (density < LEAST_DENSITY) return null;
  const travel = Math.log(density);
  if (travel + mostBesides < least) return null;
  const error = journeys.error(from, to);
  const legs = first.isHeaded || second.isHeaded ? journeys.legs(from, to) : [];
  const words = [
    ...headings(first.sighting.flocks, legs, error, 'leaving'),
    ...headings(second.sighting.flocks, legs, error, 'arrived'),
    ...stated(first, second, waterbody),
    ...seenFlying(first, second, flight, waterbody),
    ...missed('first', first.seenBy),
    ...missed('later', second.seenBy),
  ];
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

function travelText(first: Seen, second: Seen, { journeys, protocol }: Setting): Saying {
  const [from, to] = [first.lastAt, second.firstAt];
  const hours = second.came.flatMap((came) => first.left.map((left) => (came - left) / 60));
  return legText(journeys.legs(from, to), hours, journeys.error(from, to), protocol);
}

function alternativesText(others: number, place: Said): Saying {
  if (others === 1) return say('it is the only flock that was followed in {place}', { place });
  return Number.isInteger(others)
    ? say('it is one of {number} flocks in {place}', { number: others, place })
    : // Totals stand for about so many.
      say('it is one of about {number} flocks in {place}', { number: Math.round(others), place });
}

function seenFlying(
  { sighting: first }: Seen,
  { sighting: second }: Seen,
  flight: Flight | null,
  waterbody: Waterbody,
): LinkEvidence[] {
  if (flight === null) return [];
  const text = say('{number} such birds were seen flying from {place} to {other}', {
    number: flight.number,
    place: named(first, waterbody),
    other: named(second, waterbody),
  });
  return [{ name: 'seen-flying', text, weight: SEEN_FLYING }];
}

function missed(whose: 'first' | 'later', seenBy: SeenBy): LinkEvidence[] {
  const { saw, of } = seenBy;
  if (of < 2) return [];
  const bySome =
    whose === 'first'
      ? say('first seen by {saw} of {all} observers of the section', { saw, all: of })
      : say('later seen by {saw} of {all} observers of the section', { saw, all: of });
  const byAll =
    whose === 'first'
      ? say('first seen by all {all} observers of the section', { all: of })
      : say('later seen by all {all} observers of the section', { all: of });
  const text = saw < of ? bySome : byAll;
  return [{ name: 'seen-by', text, weight: missedRatio(seenBy) }];
}

/** Log-likelihood ratio of having been missed by some, or by nobody: of a flock that moved against one at rest. */
function missedRatio({ saw, of }: SeenBy): number {
  if (of < 2) return 0;
  const atRest = 1 - (1 - MISSED_AT_REST) ** of;
  const moving = Math.min(MOST_MISSED, MISSED_MOVING * of);
  return saw < of ? Math.log(moving / atRest) : Math.log((1 - moving) / (1 - atRest));
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
  const degrees = together(
    [...new Set(noted)]
      .toSorted((a, b) => a - b)
      .map((number) => say('{number}°', { number: String(number) })),
  );
  const seen =
    when === 'leaving'
      ? say('first seen heading {degrees}', { degrees })
      : say('later seen heading {degrees}', { degrees });
  const fitting =
    fit > 0
      ? say('{seen}, which fits the way', { seen })
      : say('{seen}, which does not fit the way', { seen });
  const [leg] = legs;
  const text =
    legs.length === 1 && leg !== undefined
      ? say('{fitting} ({way}°)', { fitting, way: String(Math.round(leg.bearing)) })
      : fitting;
  return [{ name: 'heading', text, weight }];
}

function wentRatio({ sighting: first, wentTo }: Seen, { sighting: second }: Seen): number | null {
  return statedLogRatio(wentTo, first.sections, second.sections);
}

function cameRatio({ sighting: first }: Seen, { sighting: second, cameFrom }: Seen): number | null {
  return statedLogRatio(cameFrom, second.sections, first.sections);
}

function stated(first: Seen, second: Seen, waterbody: Waterbody): LinkEvidence[] {
  const names = (sections: readonly string[]): Said =>
    together(sections.map((section) => waterbody.nameOf(section)));
  const evidence: LinkEvidence[] = [];
  const went = wentRatio(first, second);
  if (went !== null) {
    const text = say('reported as going to {places}', { places: names(first.wentTo) });
    evidence.push({ name: 'stated', text, weight: went });
  }
  const came = cameRatio(first, second);
  if (came !== null) {
    const text = say('reported as coming from {places}', { places: names(second.cameFrom) });
    evidence.push({ name: 'stated', text, weight: came });
  }
  return evidence;
}

/** Where a flock was seen, by the names of its sections. */
export function named(sighting: FlockSighting, waterbody: Waterbody): Said {
  return joined(
    sighting.sections.map((section) => waterbody.nameOf(section)),
    ' + ',
  );
}
