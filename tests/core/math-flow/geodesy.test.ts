import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesicArea, geodesicBetween } from '../../../server/core/math/geodesy.js';
import { integrate } from '../../../server/core/math/gauss-legendre.js';
import type { Position } from '../../../server/core/model/snapshot.js';

const nearby = fc.record({
  lon: fc.double({ min: -179, max: 179, noNaN: true }),
  lat: fc.double({ min: -80, max: 80, noNaN: true }),
  east: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  north: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
});

describe('geodesicBetween', () => {
  it('is as far back as it is there, and the way back starts where it ended, turned round', () => {
    fc.assert(
      fc.property(nearby, ({ lon, lat, east, north }) => {
        const there = geodesicBetween([lon, lat], [lon + east, lat + north]);
        const back = geodesicBetween([lon + east, lat + north], [lon, lat]);
        expect(Math.abs(there.distance - back.distance)).toBeLessThan(1e-6);
        if (there.distance < 100) return;
        const turned = (back.bearing - there.finalBearing + 720) % 360;
        expect(Math.abs(turned - 180)).toBeLessThan(1e-6);
      }),
    );
  });

  it('measures along the equator and a meridian as the definitions say', () => {
    // Equator: radius × angle, exactly. One metre is 1/1852 of a sea mile by definition; a minute
    // of latitude at 45° is 1852.2 m on WGS 84 (from memory, common tables print 1852.2).
    const equator = geodesicBetween([0, 0], [1, 0]);
    expect(equator.distance).toBeCloseTo((6_378_137 * Math.PI) / 180, 6);
    expect(equator.bearing).toBeCloseTo(90, 12);
    const minute = geodesicBetween([10, 45 - 1 / 120], [10, 45 + 1 / 120]);
    expect(minute.distance).toBeCloseTo(1852.2, 1);
    expect(minute.bearing).toBe(0);
  });

  it('gives 0 for one place, and crosses the antimeridian the short way', () => {
    expect(geodesicBetween([7, 50], [7, 50])).toEqual({ distance: 0, bearing: 0, finalBearing: 0 });
    const across = geodesicBetween([179.9, 60], [-179.9, 60]);
    expect(across.distance).toBeLessThan(12_000);
  });

  it('refuses positions opposite each other rather than guessing', () => {
    expect(() => geodesicBetween([0, 0], [179.9, 0.1])).toThrow('opposite each other');
  });
});

describe('geodesicArea', () => {
  it('takes holes off', () => {
    const box = (west: number, south: number, size: number): Position[] => [
      [west, south],
      [west + size, south],
      [west + size, south + size],
      [west, south + size],
      [west, south],
    ];
    const whole = geodesicArea([box(5, 50, 0.1)]);
    const part = geodesicArea([box(5.02, 50.02, 0.02)]);
    expect(geodesicArea([box(5, 50, 0.1), box(5.02, 50.02, 0.02)])).toBeCloseTo(whole - part, 3);
  });
});

describe('integrate', () => {
  it('is exact for polynomials and to rounding for smooth functions', () => {
    expect(integrate((x) => x ** 9 - 3 * x ** 2, 0, 2)).toBeCloseTo(1024 / 10 - 8, 10);
    expect(integrate(Math.exp, -1, 3)).toBeCloseTo(Math.exp(3) - Math.exp(-1), 12);
  });
});
