import { t } from '@lingui/core/macro';
import { geodesicBetween } from '../../../server/core/math/geodesy.js';
import type { Polygon, Position } from '../../../server/core/model/snapshot.js';
import { birds } from '../ui/words.js';
import { compassPoint } from './compass-point.js';
import type { Place } from './place.js';

/** `1,240 m to the NW (312°) of Old pier`; `null` where nothing is named that it could be told from. */
export function fromNamedThing(at: Position, { vantage }: Place): string | null {
  if (vantage === null || Math.abs(at[1] - vantage.position[1]) > 1) return null;
  const { distance, bearing } = geodesicBetween(vantage.position, at);
  const towards = Math.round(bearing) % 360;
  const metres = birds(Math.round(distance));
  const point = compassPoint(towards).short;
  const { name } = vantage;
  return t`${metres} m to the ${point} (${towards}°) of ${name}`;
}

/** Where a cross-hair is, for whoever does not see it: `820 m to the NE (41°) of Old pier, in West Basin`. */
export function crossHairWords(at: Position, place: Place): string {
  const section = place.sections.find(({ polygon }) => isWithin(at, polygon));
  const inside = section === undefined ? t`outside your section` : inSection(section.name);
  const latitude = at[1].toFixed(4);
  const longitude = at[0].toFixed(4);
  const from = fromNamedThing(at, place) ?? t`Latitude ${latitude}, longitude ${longitude}`;
  return `${from}, ${inside}`;
}

function inSection(section: string): string {
  return t`in ${section}`;
}

/** Even-odd rule over all rings: a hole is outside. */
function isWithin([lon, lat]: Position, polygon: Polygon): boolean {
  let crossings = 0;
  for (const ring of polygon) {
    ring.forEach(([lon1, lat1], index) => {
      const [lon2, lat2] = ring[(index + 1) % ring.length] ?? [lon1, lat1];
      if (lat1 > lat === lat2 > lat) return;
      if (lon < lon1 + ((lat - lat1) / (lat2 - lat1)) * (lon2 - lon1)) crossings += 1;
    });
  }
  return crossings % 2 === 1;
}
