import fc from 'fast-check';
import geodesicLibrary from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { areaOfFigure } from '../../server/core/math/figure-overlap.js';
import { geodesicFrom } from '../../server/core/math/geodesic-direct.js';
import { geodesicArea, geodesicBetween } from '../../server/core/math/geodesy.js';
import { LocalPlane, middleOf } from '../../server/core/math/local-plane.js';
import type { Polygon, Position } from '../../server/core/model/snapshot.js';

/** C. Karney's GeographicLib in JavaScript, the npm package `geographiclib-geodesic` 2.2.0. */
const wgs84 = geodesicLibrary.Geodesic.WGS84;

/** Square metres in a ring as the library has it. */
function areaByLibrary(ring: readonly Position[]): number {
  const polygon = wgs84.Polygon(false);
  ring.slice(1).forEach(([lon, lat]) => polygon.AddPoint(lat, lon));
  const { area = NaN } = polygon.Compute(false, true);
  return Math.abs(area);
}

/** A lake with a winding shore: corners at rising angles round a middle, as far off as it is wide. */
const lake = (widest: number) =>
  fc
    .record({
      lon: fc.double({ min: -180, max: 180, noNaN: true }),
      lat: fc.double({ min: -75, max: 75, noNaN: true }),
      reach: fc.array(fc.double({ min: 0.3, max: 1, noNaN: true }), {
        minLength: 5,
        maxLength: 24,
      }),
      half: fc.double({ min: 0.2, max: widest / 2, noNaN: true }),
    })
    .map(({ lon, lat, reach, half }): Position[] => {
      const corners = reach.map((far, index): Position => {
        const bearing = (360 * index) / reach.length;
        const { lon2, lat2 } = wgs84.Direct(lat, lon, bearing, 1000 * half * far);
        return [lon2 ?? NaN, lat2 ?? NaN];
      });
      return [...corners, corners[0] ?? [lon, lat]];
    });

const turn = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

describe('geodesics against GeographicLib', () => {
  it('agree to a micrometre within a waterbody and its surroundings', () => {
    fc.assert(
      fc.property(lake(300), (ring) => {
        const [from = [0, 0], , to = [0, 0]] = ring;
        const ours = geodesicBetween(from, to);
        const theirs = wgs84.Inverse(from[1], from[0], to[1], to[0]);
        expect(Math.abs(ours.distance - (theirs.s12 ?? NaN))).toBeLessThan(1e-6);
        // A bearing of a line under a kilometre has fewer digits.
        const allowed = 1e-9 + 1e-4 / ours.distance;
        expect(turn(ours.bearing, theirs.azi1 ?? NaN)).toBeLessThan(allowed);
        expect(turn(ours.finalBearing, theirs.azi2 ?? NaN)).toBeLessThan(allowed);
      }),
      { numRuns: 500 },
    );
  });

  it('agree over the globe, but for places opposite each other', () => {
    const place = fc.tuple(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -89, max: 89, noNaN: true }),
    );
    fc.assert(
      fc.property(place, place, (from, to) => {
        const theirs = wgs84.Inverse(from[1], from[0], to[1], to[0]);
        fc.pre(theirs.a12 < 175);
        const ours = geodesicBetween(from, to);
        expect(Math.abs(ours.distance - (theirs.s12 ?? NaN))).toBeLessThan(1e-5);
      }),
      { numRuns: 500 },
    );
  });

  it('enclose the same area', () => {
    fc.assert(
      fc.property(lake(300), (ring) => {
        const theirs = areaByLibrary(ring);
        // Both have some ten digits; a square metre is the least either has over a large ring.
        expect(Math.abs(geodesicArea([ring]) - theirs)).toBeLessThan(1 + 1e-9 * theirs);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the direct problem against GeographicLib', () => {
  const start = fc.tuple(
    fc.double({ min: -180, max: 180, noNaN: true }),
    fc.double({ min: -89, max: 89, noNaN: true }),
  );
  const bearing = fc.oneof(
    fc.double({ min: 0, max: 360, noNaN: true }),
    fc.constantFrom(0, 90, 180, 270),
  );

  /** Metres from where ours arrives to where the library does. */
  function apart(from: Position, towards: number, metres: number): number {
    const ours = geodesicFrom(from, towards, metres);
    const { lat2 = NaN, lon2 = NaN } = wgs84.Direct(from[1], from[0], towards, metres);
    return wgs84.Inverse(ours[1], ours[0], lat2, lon2).s12 ?? NaN;
  }

  it('arrives within a micrometre as far as one can see', () => {
    const distance = fc.double({ min: 0, max: 30_000, noNaN: true });
    fc.assert(
      fc.property(start, bearing, distance, (from, towards, metres) => {
        expect(apart(from, towards, metres)).toBeLessThan(1e-6);
      }),
      { numRuns: 500 },
    );
  });

  it('arrives within ten micrometres over the globe', () => {
    const distance = fc.double({ min: 0, max: 20_000_000, noNaN: true });
    fc.assert(
      fc.property(start, bearing, distance, (from, towards, metres) => {
        expect(apart(from, towards, metres)).toBeLessThan(1e-5);
      }),
      { numRuns: 500 },
    );
  });

  it('is the inverse of the inverse problem', () => {
    fc.assert(
      fc.property(lake(300), (ring) => {
        const [from = [0, 0], , to = [0, 0]] = ring;
        const { distance, bearing: towards } = geodesicBetween(from, to);
        const [lon, lat] = geodesicFrom(from, towards, distance);
        expect(wgs84.Inverse(lat, lon, to[1], to[0]).s12).toBeLessThan(1e-5);
      }),
      { numRuns: 200 },
    );
  });

  it('refuses what is no distance', () => {
    expect(() => geodesicFrom([0, 0], 0, -1)).toThrow('from 0 to');
    expect(() => geodesicFrom([0, 0], 0, NaN)).toThrow(RangeError);
    expect(() => geodesicFrom([0, 0], 0, 20_000_001)).toThrow(RangeError);
  });
});

describe('the local plane against GeographicLib', () => {
  const planeOf = (ring: readonly Position[]) => new LocalPlane(middleOf(ring));

  it.each([
    { widest: 10, area: 1e-6, length: 2e-6 },
    { widest: 100, area: 1e-4, length: 5e-5 },
  ])('to $widest km: areas within $area, lengths within $length', ({ widest, area, length }) => {
    let [worstArea, worstLength] = [0, 0];
    fc.assert(
      fc.property(lake(widest), (ring) => {
        const plane = planeOf(ring);
        const polygon: Polygon = [ring];
        const ours = areaOfFigure(plane.figureOf(polygon)) * 1e6;
        worstArea = Math.max(worstArea, Math.abs(ours / areaByLibrary(ring) - 1));
        ring.forEach((from, index) => {
          const to = ring[(index + 3) % ring.length] ?? from;
          const metres = wgs84.Inverse(from[1], from[0], to[1], to[0]).s12 ?? NaN;
          if (metres < 1) return;
          const [a, b] = [plane.pointOf(from), plane.pointOf(to)];
          const straight = 1000 * Math.hypot(b[0] - a[0], b[1] - a[1]);
          worstLength = Math.max(worstLength, Math.abs(straight / metres - 1));
        });
        expect(worstArea).toBeLessThan(area);
        expect(worstLength).toBeLessThan(length);
      }),
      { numRuns: 400 },
    );
    // Edges are straight on the map and geodesics there: some difference is seen.
    expect(worstArea).toBeGreaterThan(area / 1e3);
  });
});
