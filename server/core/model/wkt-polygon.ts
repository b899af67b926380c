import type { Polygon, Position } from './snapshot.js';

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u;

/**
 * The rings of a polygon in well-known text (OGC 06-103r4, 7.2): `POLYGON ((30 10, 40 40, 20 40, 30 10))`.
 * Letters of either case and any space are understood. `null` for anything else; whether the rings
 * are closed and so on is not looked at.
 */
export function readWktPolygon(text: string): Polygon | null {
  const body = /^\s*polygon\s*\(\s*\((.*)\)\s*\)\s*$/isu.exec(text)?.[1];
  if (body === undefined) return null;
  const rings: Position[][] = [];
  for (const ring of body.split(/\)\s*,\s*\(/u)) {
    const positions: Position[] = [];
    for (const pair of ring.split(',')) {
      const [lon, lat, ...more] = pair.trim().split(/\s+/u);
      if (lon === undefined || lat === undefined || more.length > 0) return null;
      if (!NUMBER.test(lon) || !NUMBER.test(lat)) return null;
      positions.push([Number(lon), Number(lat)]);
    }
    rings.push(positions);
  }
  return rings;
}

/** The polygon as well-known text; read again it has the same numbers. */
export function writeWktPolygon(polygon: readonly (readonly (readonly number[])[])[]): string {
  const rings = polygon.map((ring) => `(${ring.map((pair) => pair.join(' ')).join(', ')})`);
  return `POLYGON (${rings.join(', ')})`;
}
