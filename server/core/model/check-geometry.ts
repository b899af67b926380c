import type { KeyReader } from './key-reader.js';
import { inOnePiece, isClosed, isFlat, selfCrossing } from './polygon-shape.js';
import type { Polygon, Position, ShorePart } from './snapshot.js';
import { joined, say, type Saying } from './saying.js';

// Longitudes may run on past 180 for a waterbody on the antimeridian. No map is drawn about a pole.
const POSITION = say(
  'a position [lon, lat]: degrees from -360 to 360 (past 180 where a place lies on the antimeridian) and from -89 to 89 (no poles)',
);

function readPosition(value: unknown): Position | null {
  if (!Array.isArray(value)) return null;
  const [lon, lat] = value as readonly unknown[];
  if (typeof lon !== 'number' || typeof lat !== 'number') return null;
  if (!(Math.abs(lon) <= 360 && Math.abs(lat) <= 89)) return null;
  return [lon + 0, lat + 0];
}

/** A feature's geometry if it is of one of some types; else a fault and `null`. */
function geometryOf<Type extends string>(
  feature: KeyReader,
  types: readonly Type[],
  what = say('geometry that fits this kind of place'),
): { readonly geometry: KeyReader; readonly type: Type } | null {
  const geometry = feature.child('geometry', say('a {types}', { types: joined(types, ' or ') }));
  const type = geometry?.word('type', types, what);
  return geometry === null || type === null || type === undefined ? null : { geometry, type };
}

/** The position of a Point; a fault and 0/0 if it is none. */
export function checkPoint(feature: KeyReader): Position {
  const geometry = geometryOf(feature, ['Point'])?.geometry;
  if (geometry === undefined) return [0, 0];
  const position = readPosition(geometry.value('coordinates'));
  if (position === null) {
    geometry.fault('coordinates', 'bad-position', say('this is not a position'), POSITION);
  }
  return position ?? [0, 0];
}

const ONE_POLYGON = say(
  'geometry of a section or view: these are one Polygon each, on the antimeridian with longitudes that run on past 180',
);

/** The rings of a Polygon, with a fault for each that is not an outline. */
export function checkPolygon(feature: KeyReader): Polygon {
  const geometry = geometryOf(feature, ['Polygon'], ONE_POLYGON)?.geometry;
  if (geometry === undefined) return [];
  const rings = geometry.list('coordinates', say('a list of rings of positions'));
  return rings === null ? [] : checkRings(geometry, rings, 'coordinates');
}

const SHORE_TYPES = ['Polygon', 'MultiPolygon', 'LineString', 'MultiLineString'] as const;

/** The parts of a shoreline, a Polygon or line each, with a fault for each that is none. */
export function checkShore(feature: KeyReader): readonly ShorePart[] {
  const found = geometryOf(feature, SHORE_TYPES);
  const list = found?.geometry.list('coordinates', say('a list of positions, or of lists of them'));
  if (found === null || list === null || list === undefined) return [];
  const { geometry, type } = found;
  if (list.length === 0) {
    geometry.fault(
      'coordinates',
      'too-few-positions',
      say('the shoreline is empty'),
      say('one line or more'),
    );
  }
  const area = (rings: readonly unknown[], key: string): ShorePart => ({
    form: 'area',
    lines: checkRings(geometry, rings, key),
  });
  const line = (value: unknown, key: string): ShorePart => ({
    form: 'line',
    lines: [checkLine(geometry, value, key)],
  });
  switch (type) {
    case 'Polygon':
      return [area(list, 'coordinates')];
    case 'MultiPolygon':
      return list.flatMap((rings, index) => {
        const key = `coordinates[${index}]`;
        if (Array.isArray(rings)) return [area(rings as readonly unknown[], key)];
        fault(
          geometry,
          key,
          rings,
          'wrong-type',
          say('this is not a polygon'),
          say('a list of rings'),
        );
        return [];
      });
    case 'LineString':
      return [line(list, 'coordinates')];
    case 'MultiLineString':
      return list.map((each, index) => line(each, `coordinates[${index}]`));
  }
}

function fault(
  geometry: KeyReader,
  key: string,
  value: unknown,
  code: string,
  problem: Saying,
  expected: Saying,
): void {
  geometry.faultAt(geometry.at(key), value, { code, problem, expected, nearest: null });
}

function checkRings(geometry: KeyReader, rings: readonly unknown[], key: string): Polygon {
  if (rings.length === 0) {
    fault(
      geometry,
      key,
      rings,
      'too-few-positions',
      say('the polygon has no ring'),
      say('one or more'),
    );
  }
  return rings.map((ring, index) => {
    const name = index === 0 ? say('the outline') : say('hole {index}', { index });
    return checkRing(geometry, ring, `${key}[${index}]`, name);
  });
}

/** Its positions, with a fault for each that is none; `null` if it is no list. */
function readPositions(geometry: KeyReader, value: unknown, key: string): Position[] | null {
  if (!Array.isArray(value)) {
    fault(
      geometry,
      key,
      value,
      'wrong-type',
      say('this is not a ring or line'),
      say('a list of positions'),
    );
    return null;
  }
  return (value as readonly unknown[]).flatMap((entry, index) => {
    const position = readPosition(entry);
    if (position !== null) return [position];
    fault(
      geometry,
      `${key}[${index}]`,
      entry,
      'bad-position',
      say('this is not a position'),
      POSITION,
    );
    return [];
  });
}

function checkLine(geometry: KeyReader, value: unknown, key: string): readonly Position[] {
  const line = readPositions(geometry, value, key);
  if (line !== null && line.length < 2 && Array.isArray(value) && value.length < 2) {
    const problem = say('the line has {number} positions', { number: line.length });
    fault(geometry, key, value, 'too-few-positions', problem, say('two or more'));
  }
  return line ?? [];
}

function checkRing(
  geometry: KeyReader,
  value: unknown,
  key: string,
  name: Saying,
): readonly Position[] {
  const ring = readPositions(geometry, value, key);
  if (ring === null || !Array.isArray(value) || ring.length < value.length) return ring ?? [];
  const wrong = (code: string, problem: Saying, expected: Saying): void =>
    fault(geometry, key, value, code, problem, expected);
  if (ring.length < 4) {
    const expected = say('four or more, the last the same as the first');
    wrong(
      'too-few-positions',
      say('{name} has {number} positions', { name, number: ring.length }),
      expected,
    );
  } else if (!isClosed(ring)) {
    wrong(
      'not-closed',
      say('{name} is not closed', { name }),
      say('a last position that is the same as the first'),
    );
  } else {
    const piece = inOnePiece(ring);
    const crossing = selfCrossing(piece);
    if (isFlat(piece)) {
      const problem = say('{name} encloses nothing: all its positions lie on one line', { name });
      wrong('no-area', problem, say('a ring with water inside'));
    } else if (crossing !== null) {
      const problem = say('{name} crosses or touches itself at {position} (lon lat)', {
        name,
        position: positionText(crossing),
      });
      const expected = say(
        'a ring whose sides meet only in its corners: put the corners near there in their order along the shore, or draw two places',
      );
      wrong('self-crossing', problem, expected);
    }
  }
  return ring;
}

/** To about a metre. */
function positionText(position: Position): string {
  return position.map((degrees) => Number(degrees.toFixed(5))).join(' ');
}
