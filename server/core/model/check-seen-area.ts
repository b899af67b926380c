import { shareCovered } from '../math/share-covered.js';
import { checkPolygon } from './check-geometry.js';
import type { Fault } from './fault.js';
import { KeyReader } from './key-reader.js';
import type { KnownIds } from './raw.js';
import type { RowReader } from './row-reader.js';
import { say } from './saying.js';
import type { Polygon } from './snapshot.js';
import { readWktPolygon } from './wkt-polygon.js';

/** Whoever draws by hand sets a few corners; looking for crossings takes their square. */
const MOST_CORNERS = 500;

const EXPECTED = say(
  'one outline as well-known text, such as POLYGON ((lon lat, lon lat, lon lat, lon lat)), its last position the same as its first',
);

/**
 * What was seen of a tally's sections, as it was drawn: one closed outline without holes that does not
 * cross itself and has some of the sections' water inside. `null` where nothing was drawn.
 */
export function checkSeenArea(
  reader: RowReader,
  sections: readonly string[],
  known: KnownIds,
): Polygon | null {
  const column = 'seen-area';
  const text = reader.text(column);
  if (text === null) return null;
  const coordinates = readWktPolygon(text);
  const corners = coordinates?.[0]?.length ?? 0;
  if (coordinates === null) {
    reader.fault(column, 'not-wkt', say('this is not a polygon'), EXPECTED);
    return null;
  }
  if (coordinates.length > 1) {
    reader.fault(column, 'has-holes', say('the polygon has holes'), EXPECTED);
    return null;
  }
  if (corners > MOST_CORNERS) {
    const problem = say('the outline has {corners} positions', { corners });
    const expected = say('{most} at most', { most: MOST_CORNERS });
    reader.fault(column, 'too-many-positions', problem, expected);
    return null;
  }
  const found: Fault[] = [];
  const geometry = { type: 'Polygon', coordinates };
  const polygon = checkPolygon(new KeyReader('', '', { geometry }, found));
  for (const { code, problem, expected } of found) reader.fault(column, code, problem, expected);
  if (found.length > 0) return null;
  const waters = sections.flatMap((id) => {
    const water = known.waters.get(id);
    return water === undefined ? [] : [water];
  });
  // Sections that are not known have a fault of their own.
  if (waters.length === sections.length && shareCovered(waters, polygon) === 0) {
    const problem = say('the outline does not touch the section');
    reader.fault(column, 'outside', problem, say('an outline of what was seen of the section'));
  }
  return polygon;
}
