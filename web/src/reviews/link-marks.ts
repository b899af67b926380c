import { plural } from '@lingui/core/macro';
import type { FlockPartsFragment, LinkPartsFragment } from '../graphql/generated/graphql.js';
import { innerPoint } from '../plans/inner-point.js';
import type { MapArrow, MapFlock } from '../plans/map-marks.js';
import type { LonLat, Point } from '../plans/projection.js';
import type { MapSection } from '../plans/waterbody-map.js';
import { clock } from '../ui/words.js';
import { arrowWords, timesOf } from './link-words.js';

type Sighting = LinkPartsFragment['first'];

/** Birds are still taken to be where they were seen so long afterwards, in milliseconds. */
const STILL_THERE = 5 * 60_000;

/** What the map shows of links and flocks at one moment. */
export interface Scene {
  readonly flocks: readonly MapFlock[];
  readonly arrows: readonly MapArrow[];
}

export interface SceneOf {
  readonly chosen: LinkPartsFragment;
  readonly links: readonly LinkPartsFragment[];
  readonly flocks: readonly FlockPartsFragment[];
  readonly sections: readonly MapSection[];
  /** Milliseconds since 1970; what was seen later is not shown. */
  readonly moment: number;
  readonly timeZone: string;
}

/** Flocks seen by then that have a place, and links of which both sightings were made by then. */
export function sceneOf(scene: SceneOf): Scene {
  const { chosen, moment, timeZone } = scene;
  const own = new Set([...chosen.first.lines, ...chosen.second.lines]);
  const others = scene.flocks
    .filter((flock) => isSeen(flock, moment) && !flock.lines.some((line) => own.has(line)))
    .flatMap((flock): MapFlock[] => {
      if (!flock.position) return [];
      const isNow = moment <= Date.parse(flock.end) + STILL_THERE;
      return [
        {
          id: flock.lines.join('+'),
          at: flock.position,
          number: flock.number,
          mark: 'other',
          isPlaced: true,
          isNow,
          words: isNow && flock.timeNoted ? [clock(flock.start, timeZone)] : [],
        },
      ];
    });
  const sightings = (['first', 'second'] as const).flatMap((mark): MapFlock[] => {
    const sighting = chosen[mark];
    const place = placeOf(sighting, scene.sections);
    if (place === null || !isSeen(sighting, moment)) return [];
    const { number } = sighting;
    const words = [
      plural(number, { one: '# bird', other: '# birds' }),
      timesOf(sighting, timeZone),
    ];
    return [{ ...place, id: mark, number, mark, isNow: true, words }];
  });
  const arrows = scene.links
    .filter(({ first, second }) => isSeen(first, moment) && isSeen(second, moment))
    .flatMap((link): MapArrow[] => {
      const [from, to] = [
        placeOf(link.first, scene.sections),
        placeOf(link.second, scene.sections),
      ];
      if (from === null || to === null) return [];
      const isChosen = link.id === chosen.id;
      return [
        {
          id: link.id,
          from: from.at,
          to: to.at,
          chance: link.probability,
          isChosen,
          isStill: link.kind === 'overlap',
          isRejected: link.ruling === 'rejected',
          words: arrowWords(link, scene.links),
        },
      ];
    })
    // The chosen one lies on top.
    .sort((one, other) => Number(one.isChosen) - Number(other.isChosen));
  return { flocks: [...others, ...sightings], arrows };
}

/** Whether it was seen by then; without a time it may have been at any. */
export function isSeen(seen: { readonly start?: string | null }, moment: number): boolean {
  return !seen.start || Date.parse(seen.start) <= moment;
}

/** Where a sighting was; if that was not noted, the middle of its section. */
export function placeOf(
  sighting: Sighting,
  sections: readonly MapSection[],
): { readonly at: LonLat; readonly isPlaced: boolean } | null {
  if (sighting.position?.length === 2) return { at: sighting.position, isPlaced: true };
  const section = sections.find(({ id }) => id === sighting.section.id);
  const rings = section?.polygon.map((ring) => ring.map(([lon = 0, lat = 0]): Point => [lon, lat]));
  const world = { left: -180, right: 180, top: -90, bottom: 90 };
  const at = rings === undefined ? null : innerPoint(rings, world);
  return at === null ? null : { at, isPlaced: false };
}
