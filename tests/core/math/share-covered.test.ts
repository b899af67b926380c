import fc from 'fast-check';
import { intersection } from 'polyclip-ts';
import geodesicLibrary from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { shareCovered } from '../../../server/core/math/share-covered.js';
import type { Polygon, Position } from '../../../server/core/model/snapshot.js';

const square = (west: number, south: number, side = 0.02): Polygon => [
  [
    [west, south],
    [west + side, south],
    [west + side, south + side],
    [west, south + side],
    [west, south],
  ],
];

/** Square metres of clipped rings, by C. Karney's GeographicLib (npm package, 2.2.0). */
function areaByLibrary(polygons: readonly (readonly (readonly [number, number])[][])[]): number {
  const rings = polygons.flatMap(([outside = [], ...holes]) => [
    { ring: outside, sign: 1 },
    ...holes.map((ring) => ({ ring, sign: -1 })),
  ]);
  return rings.reduce((sum, { ring, sign }) => {
    const polygon = geodesicLibrary.Geodesic.WGS84.Polygon(false);
    ring.slice(1).forEach(([lon, lat]) => polygon.AddPoint(lat, lon));
    return sum + sign * Math.abs(polygon.Compute(false, true).area ?? NaN);
  }, 0);
}

describe('the share of a section that an outline covers', () => {
  it('is a half for half, whichever way it is drawn and whatever lies beyond', () => {
    const half: Position[] = [
      [-79.05, 44.03],
      [-79.01, 44.03],
      [-79.01, 43.9],
      [-79.05, 43.9],
    ];
    expect(shareCovered([square(-79.02, 44)], [half])).toBeCloseTo(0.5, 9);
    expect(shareCovered([square(-79.02, 44)], [half.toReversed()])).toBeCloseTo(0.5, 9);
  });

  it('is taken of all sections together', () => {
    const two = [square(-79.02, 44), square(-79, 44)];
    expect(shareCovered(two, square(-79.02, 44))).toBeCloseTo(0.5, 6);
    expect(shareCovered(two, square(-79.5, 43.5, 1))).toBe(1);
    expect(shareCovered(two, square(-78, 44))).toBe(0);
    expect(shareCovered(two, [[[-79, 44]]])).toBe(0);
  });

  it('agrees with a clipping library and geodesic areas', () => {
    // The library's edges are straight in degrees, ours on the map: over 400 m, 3 mm apart.
    // On a fine grid: corners nearer to one another than that are beyond the library.
    const corner = fc.tuple(
      fc.integer({ min: -400, max: 400 }),
      fc.integer({ min: -400, max: 400 }),
    );
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 8 }), (corners) => {
        const sorted = corners
          .toSorted((one, other) => Math.atan2(one[1], one[0]) - Math.atan2(other[1], other[0]))
          .map(([x, y]): [number, number] => [-79.001 + x / 163840, 44.001 + y / 163840]);
        const outline = [...sorted, sorted[0] ?? [0, 0]];
        const [ring = []] = square(-79.002, 44, 0.002);
        const section = [ring.map(([lon, lat]): [number, number] => [lon, lat])];
        const common = areaByLibrary(intersection(section, [outline]));
        const share = common / areaByLibrary([section]);
        expect(Math.abs(shareCovered([[ring]], [sorted]) - share)).toBeLessThan(1e-4);
      }),
    );
  });
});
