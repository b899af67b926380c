import { describe, expect, test } from 'vitest';
import { innerPoint } from '../../web/src/plans/inner-point.js';
import { fitProjection, kilometresBetween, polygonPath } from '../../web/src/plans/projection.js';

describe('the map of the waterbody', () => {
  test('a degree of longitude is as much shorter than one of latitude as on the ground', () => {
    const corners = [
      [-79.05, 44.95],
      [-78.95, 45.05],
    ];
    const { project } = fitProjection(corners, 800, 800);
    const [x0, y0] = project([-79.02, 45]);
    const [x1, y1] = project([-78.98, 45.04]);
    // Lengths of a degree at 45° on WGS 84: 78.847 km of longitude, 111.132 km of latitude (National
    // Geospatial-Intelligence Agency, length of a degree calculator; from memory).
    const onPage = Math.abs((x1 - x0) / (y1 - y0));
    expect(onPage).toBeCloseTo(78.847 / 111.132, 2);
    // North is up.
    expect(y1).toBeLessThan(y0);
  });

  test('a waterbody on the antimeridian is drawn as anywhere else, however it is written', () => {
    const corners = [
      [-0.2, 52],
      [0.1, 52.1],
      [0.3, 51.9],
    ];
    const here = fitProjection(corners, 640, 640);
    const far = (lon: number) => [180 + lon, 180 + lon - 360, lon > 0 ? lon - 180 : lon + 180];
    for (const written of [0, 1, 2]) {
      const moved = corners.map(([lon = 0, lat = 0]) => [far(lon)[written] ?? NaN, lat]);
      const there = fitProjection(moved, 640, 640);
      expect(there.pixelsPerKilometre).toBeCloseTo(here.pixelsPerKilometre, 6);
      corners.forEach((corner, index) => {
        const [x, y] = there.project(moved[index] ?? []);
        expect(x).toBeCloseTo(here.project(corner)[0], 6);
        expect(y).toBeCloseTo(here.project(corner)[1], 6);
      });
    }
    expect(kilometresBetween([179.9, 52], [-179.9, 52])).toBeCloseTo(
      kilometresBetween([-0.1, 52], [0.1, 52]),
      9,
    );
  });

  test('everything is inside the picture, with its margin', () => {
    const positions = [
      [-79.4, 44.1],
      [-79.1, 44.15],
      [-79.2, 44.6],
    ];
    const projection = fitProjection(positions, 390, 500, { margin: 16 });
    for (const position of positions) {
      const [x, y] = projection.project(position);
      expect(x).toBeGreaterThanOrEqual(16 - 1e-6);
      expect(x).toBeLessThanOrEqual(390 - 16 + 1e-6);
      expect(y).toBeGreaterThanOrEqual(16 - 1e-6);
      expect(y).toBeLessThanOrEqual(projection.height - 16 + 1e-6);
    }
    expect(projection.height).toBeLessThanOrEqual(500);
  });

  test('a picture of two places is at least as wide and high as asked, with both in the middle', () => {
    const places = [
      [-79.001, 45],
      [-78.999, 45.0005],
    ];
    const projection = fitProjection(places, 600, 600, { margin: 50, leastKilometres: 2 });
    expect(projection.pixelsPerKilometre).toBeCloseTo(500 / 2, 6);
    const [[x1, y1], [x2, y2]] = places.map(projection.project) as [
      [number, number],
      [number, number],
    ];
    expect((x1 + x2) / 2).toBeCloseTo(300, 6);
    expect((y1 + y2) / 2).toBeCloseTo(projection.height / 2, 6);
    // 0.002 degrees of longitude at 45°: 0.1577 km on WGS 84 (as above), within half a per cent.
    expect((x2 - x1) / projection.pixelsPerKilometre).toBeCloseTo(0.1577, 2);
  });

  test('short distances agree with those on the ellipsoid', () => {
    // A degree of latitude at 45° is 111.132 km, of longitude 78.847 km (as above).
    expect(kilometresBetween([-79, 44.99], [-79, 45.01]) / (0.02 * 111.132)).toBeCloseTo(1, 2);
    expect(kilometresBetween([-79.01, 45], [-78.99, 45]) / (0.02 * 78.847)).toBeCloseTo(1, 2);
  });

  test('a name stands inside its section, where it has most room, and inside the picture', () => {
    const frame = { left: 0, top: 0, right: 100, bottom: 100 };
    // An L whose centre of mass is near its inner corner: the wide foot has more room.
    const ring = [
      [0, 0],
      [10, 0],
      [10, 60],
      [100, 60],
      [100, 100],
      [0, 100],
      [0, 0],
    ] as const;
    const [x, y] = innerPoint([ring], frame) ?? [0, 0];
    expect(x).toBeGreaterThan(10);
    expect(y).toBeCloseTo(80, -1);
    const low = innerPoint([ring], { ...frame, bottom: 40 }) ?? [0, 0];
    expect(low[0]).toBeLessThan(10);
    expect(innerPoint([ring], { left: 20, top: 0, right: 90, bottom: 50 })).toBeNull();
    // A hole is outside.
    const hole = [
      [15, 65],
      [95, 65],
      [95, 95],
      [15, 95],
      [15, 65],
    ] as const;
    const [holeX] = innerPoint([ring, hole], frame) ?? [99];
    expect(holeX).toBeLessThan(15);
  });

  test('rings become closed paths', () => {
    const projection = fitProjection(
      [
        [0, 0],
        [1, 1],
      ],
      100,
      100,
    );
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 0],
    ];
    expect(polygonPath([square, square], projection).match(/M[^Z]+Z/gu)).toHaveLength(2);
  });
});
