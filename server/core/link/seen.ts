import type { Flock } from './flock.js';
import {
  cameAt,
  earliestPlaced,
  latestPlaced,
  leftAt,
  middleOfSighting,
  overSpan,
} from './moments.js';
import type { Looks, SeenBy } from './looks.js';
import { combinePlaces } from './position-error.js';
import type { Doing } from './routes.js';
import { mostFromSexes } from './sexes.js';
import { shareError } from './shares.js';
import type { FlockSighting } from './sightings.js';
import type { Box, Ground, Waterbody, Whereabouts } from './whereabouts.js';

/** A sighting with all that is asked of it for every pair, worked out once. */
export interface Seen {
  readonly index: number;
  readonly sighting: FlockSighting;
  readonly ground: Ground;
  readonly groundNumber: number;
  /** What may be tallied from there. */
  readonly reach: Box | null;
  /** Square kilometres of its sections. */
  readonly area: number;
  readonly seenBy: SeenBy;
  readonly found: number;
  /** Where it was by all observers who say so; `null` if nobody does. */
  readonly place: ReturnType<typeof combinePlaces>;
  /** Where it was when last, and when first, seen. */
  readonly lastAt: Whereabouts;
  readonly firstAt: Whereabouts;
  /** Minutes; several where a time was not noted, all as likely. */
  readonly left: readonly number[];
  readonly came: readonly number[];
  readonly middle: number;
  /** While its section was counted: minutes spread over the span. */
  readonly span: readonly number[];
  readonly doing: Doing;
  readonly isOnItsWay: boolean;
  /** Whether some record of it has a heading. */
  readonly isHeaded: boolean;
  /** Sections that somebody saw it go to, and come from, sorted. */
  readonly wentTo: readonly string[];
  readonly cameFrom: readonly string[];
  /** Least error of its records' shares, if it is of several kinds; most that its sexes may add. */
  readonly shareError: number | null;
  readonly mostFromSexes: number | null;
}

export function seenFrom(
  sighting: FlockSighting,
  index: number,
  waterbody: Waterbody,
  looks: Looks,
): Seen {
  const { flocks, sections } = sighting;
  const ground = { sections, vantage: flocks[0]?.tally.vantage ?? null };
  const whereOf = (flock: Flock | undefined): Whereabouts =>
    waterbody.whereabouts(flock?.position ?? null, flock?.tally ?? ground);
  return {
    index,
    sighting,
    ground,
    groundNumber: waterbody.numberOf(ground),
    reach: waterbody.reachOf(ground),
    area: waterbody.areaOf(sections),
    seenBy: looks.seenBy(sighting),
    found: looks.found(sighting),
    place: combinePlaces(
      flocks.flatMap((flock) => {
        if (flock.position === null) return [];
        const { points, variance } = whereOf(flock);
        return points.map((point) => ({ point, variance }));
      }),
    ),
    lastAt: whereOf(latestPlaced(flocks)),
    firstAt: whereOf(earliestPlaced(flocks)),
    left: leftAt(flocks),
    came: cameAt(flocks),
    middle: middleOfSighting(sighting),
    span: overSpan(flocks),
    doing: doingOf(flocks),
    isOnItsWay: flocks.some(
      ({ heading, to, from }) => heading !== null || to.length + from.length > 0,
    ),
    isHeaded: flocks.some(({ heading }) => heading !== null),
    wentTo: [...new Set(flocks.flatMap(({ to }) => to))].toSorted(),
    cameFrom: [...new Set(flocks.flatMap(({ from }) => from))].toSorted(),
    shareError: sighting.parts.length < 2 ? null : Math.min(...flocks.map(shareError)),
    mostFromSexes: mostFromSexes(flocks),
  };
}

/** What it was doing when last seen: `leaving` if it was on its way over the water. */
function doingOf(flocks: readonly Flock[]): Doing {
  if (flocks.some(({ activity }) => activity === 'flushed')) return 'flushed';
  if (flocks.some(({ heading, to }) => heading !== null || to.length > 0)) return 'leaving';
  return flocks[0]?.activity ?? 'water';
}
