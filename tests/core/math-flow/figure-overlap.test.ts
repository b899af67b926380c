import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  areaOfFigure,
  depthInside,
  overlapArea,
} from '../../../server/core/math/figure-overlap.js';
import type { Figure, Point } from '../../../server/core/math/local-plane.js';
import { selfCrossing } from '../../../server/core/model/polygon-shape.js';

const square: Point[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
  [0, 0],
];
const hole: Point[] = [
  [1, 1],
  [1, 3],
  [3, 3],
  [3, 1],
  [1, 1],
];
const withHole: Figure = [square, hole];

const moved = (ring: readonly Point[], east: number, north = 0): Figure => [
  ring.map(([x, y]): Point => [x + east, y + north]),
];

/** Corners at rising angles round 0/0: never crosses itself. */
const star = fc
  .array(fc.double({ min: 0.5, max: 3, noNaN: true }), { minLength: 3, maxLength: 12 })
  .map((reach): Point[] => {
    const corners = reach.map((far, index): Point => {
      const angle = (2 * Math.PI * index) / reach.length;
      return [far * Math.cos(angle), far * Math.sin(angle)];
    });
    return [...corners, corners[0] ?? [0, 0]];
  });

describe('areaOfFigure', () => {
  it('takes holes off, whichever way a ring runs, whether it is closed or not', () => {
    expect(areaOfFigure([square])).toBe(16);
    expect(areaOfFigure(withHole)).toBe(12);
    expect(areaOfFigure([square.toReversed()])).toBe(16);
    expect(areaOfFigure([square.slice(0, 4)])).toBe(16);
  });

  it("is that of the surveyor's formula (Gauss) for any star", () => {
    fc.assert(
      fc.property(star, (ring) => {
        const twice = ring.slice(1).reduce((sum, [x, y], index) => {
          const [x0, y0] = ring[index] ?? [0, 0];
          return sum + x0 * y - x * y0;
        }, 0);
        expect(areaOfFigure([ring])).toBeCloseTo(twice / 2, 9);
      }),
    );
  });
});

describe('overlapArea', () => {
  it('knows overlap, touch, containment, a neighbour and one that lies in a hole', () => {
    expect(overlapArea([square], moved(square, 2))).toBeCloseTo(8, 12);
    expect(overlapArea([square], moved(square, 4))).toBe(0);
    expect(overlapArea([square], moved(square, 4.001))).toBe(0);
    expect(overlapArea([square], [hole])).toBe(4);
    expect(overlapArea(withHole, [hole])).toBe(0);
    expect(overlapArea(withHole, [square])).toBe(12);
    expect(overlapArea([square], moved(square, 4, 4))).toBe(0);
  });

  it('is the same either way round, no more than either, and what is left adds up', () => {
    fc.assert(
      fc.property(star, star, fc.double({ min: -3, max: 3, noNaN: true }), (a, b, by) => {
        const [one, other] = [[a], moved(b, by)];
        const both = overlapArea(one, other);
        expect(overlapArea(other, one)).toBeCloseTo(both, 9);
        expect(both).toBeLessThanOrEqual(Math.min(areaOfFigure(one), areaOfFigure(other)) + 1e-9);
        // Cut the plane in two upright halves: the parts of the overlap add up to it.
        const half = (west: number, east: number): Figure => [
          [
            [west, -9],
            [east, -9],
            [east, 9],
            [west, 9],
            [west, -9],
          ],
        ];
        const left = overlapArea(half(-9, 0.3), half(-9, 9));
        expect(left).toBeCloseTo(9.3 * 18, 9);
        const whole = overlapArea(one, half(-9, 0.3)) + overlapArea(one, half(0.3, 9));
        expect(whole).toBeCloseTo(areaOfFigure(one), 9);
      }),
    );
  });
});

describe('depthInside', () => {
  it('is the distance to the nearest edge, below 0 outside and in a hole', () => {
    expect(depthInside([0.5, 2], withHole)).toBe(0.5);
    expect(depthInside([2, 2], withHole)).toBe(-1);
    expect(depthInside([5, 2], withHole)).toBe(-1);
    expect(depthInside([7, 8], [square])).toBe(-5);
    expect(Math.abs(depthInside([4, 2], withHole))).toBe(0);
  });

  it('has the middle of a star inside, whichever way round its corners run', () => {
    fc.assert(
      fc.property(star, fc.double({ min: 0, max: 0.1, noNaN: true }), (ring, off) => {
        expect(depthInside([off, off / 2], [ring])).toBeGreaterThan(0);
        expect(depthInside([off, off / 2], [ring.toReversed()])).toBeGreaterThan(0);
        expect(depthInside([3.1 + off, off], [ring])).toBeLessThan(0);
      }),
    );
  });
});

describe('selfCrossing, by which a count refuses polygons', () => {
  it('is null for simple rings, either way round', () => {
    expect(selfCrossing(square)).toBeNull();
    expect(selfCrossing(square.toReversed())).toBeNull();
    fc.assert(fc.property(star, (ring) => selfCrossing(ring) === null));
  });

  it('is where a bow tie crosses', () => {
    const bowTie: Point[] = [
      [0, 0],
      [2, 2],
      [2, 0],
      [0, 2],
      [0, 0],
    ];
    expect(selfCrossing(bowTie)).toEqual([1, 1]);
  });
});
