import { describe, expect, it } from 'vitest';
import { areaOfFigure } from '../../server/core/math/figure-overlap.js';
import { geodesicArea, geodesicBetween } from '../../server/core/math/geodesy.js';
import { LocalPlane } from '../../server/core/math/local-plane.js';
import type { Polygon, Position } from '../../server/core/model/snapshot.js';

/**
 * Lambert azimuthal equal-area on the ellipsoid about 52° N 10° E: geospatial integrity test data of
 * the IOGP, test 5110, v2-0 of 2011 (seen as printed in a public test file of that data; eastings and
 * northings with a false origin of 4,321,000 and 3,210,000 m; tolerance there 0.05 m). The data are on
 * GRS 1980, whose flattening differs from WGS 84's by 2 in 10 billion of the flattening's digits: under
 * 0.1 mm here. 50° N 5° E is the worked example of EPSG Guidance Note 7-2 (from memory, the same point).
 */
const published: [lat: number, lon: number, east: number, north: number][] = [
  [70, 5, 4127824.65822, 5214090.649],
  [60, 5, 4041548.13, 4109791.66],
  [50, 5, 3962799.45, 2999718.85],
];

describe('LocalPlane', () => {
  const plane = new LocalPlane([10, 52]);
  it.each(published)('puts %d° N %d° E where it is published', (lat, lon, east, north) => {
    const [x, y] = plane.pointOf([lon, lat]);
    expect(Math.abs(x * 1000 + 4_321_000 - east)).toBeLessThan(0.05);
    expect(Math.abs(y * 1000 + 3_210_000 - north)).toBeLessThan(0.05);
  });

  it('keeps areas and, near its centre, lengths: held against geodesics', () => {
    const corners: Position[] = [
      [-79.1, 44.1],
      [-78.8, 44.05],
      [-78.7, 44.4],
      [-79.05, 44.35],
      [-79.1, 44.1],
    ];
    const polygon: Polygon = [corners];
    const local = new LocalPlane([-78.9, 44.2]);
    const area = areaOfFigure(local.figureOf(polygon)) * 1e6;
    expect(Math.abs(area / geodesicArea(polygon) - 1)).toBeLessThan(1e-4);
    const a: Position = corners[0] ?? [0, 0];
    const b: Position = corners[2] ?? [0, 0];
    const [from, to] = [local.pointOf(a), local.pointOf(b)];
    const straight = Math.hypot(to[0] - from[0], to[1] - from[1]) * 1000;
    expect(Math.abs(straight / geodesicBetween(a, b).distance - 1)).toBeLessThan(1e-4);
  });

  it('has a waterbody on the antimeridian in one piece, however its longitudes are written', () => {
    const square = (east: number): Polygon => [
      [
        [179.9, -17],
        [east, -17],
        [east, -16.9],
        [179.9, -16.9],
        [179.9, -17],
      ],
    ];
    const local = new LocalPlane([180, -17]);
    const [west, turned] = [square(180.1), square(-179.9)].map((polygon) =>
      areaOfFigure(local.figureOf(polygon)),
    );
    expect(turned).toBeCloseTo(west ?? NaN, 9);
    expect(turned).toBeCloseTo(geodesicArea(square(-179.9)) / 1e6, 1);
  });

  it('refuses a centre at a pole, and the far side of the globe', () => {
    expect(() => new LocalPlane([0, 90])).toThrow(/89° S to 89° N/u);
    expect(() => new LocalPlane([0, 0]).pointOf([180, 0])).toThrow(/far side/u);
  });
});
