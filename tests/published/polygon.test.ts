import { describe, expect, it } from 'vitest';
import { areaOfFigure, overlapArea } from '../../server/core/math/figure-overlap.js';
import type { Figure, Point } from '../../server/core/math/local-plane.js';

/**
 * Made-up polygons, no publication. Areas and intersection computed with shapely 1.8.5 and,
 * independently, by exact rational clipping; both agree.
 */
const checks: {
  name: string;
  a: Point[];
  b: Point[];
  areaA: number;
  areaB: number;
  intersection: number;
}[] = [
  {
    name: 'overlapping squares',
    a: [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ],
    b: [
      [1, 1],
      [3, 1],
      [3, 3],
      [1, 3],
    ],
    areaA: 4,
    areaB: 4,
    intersection: 1,
  },
  {
    name: 'a diamond across a square',
    a: [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ],
    b: [
      [2, -1],
      [5, 2],
      [2, 5],
      [-1, 2],
    ],
    areaA: 16,
    areaB: 18,
    intersection: 14,
  },
  {
    name: 'an L and a triangle',
    a: [
      [0, 0],
      [6, 0],
      [6, 2],
      [2, 2],
      [2, 6],
      [0, 6],
    ],
    b: [
      [1, 1],
      [5, 1],
      [1, 5],
    ],
    areaA: 20,
    areaB: 8,
    intersection: 6,
  },
  {
    name: 'two squares apart',
    a: [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ],
    b: [
      [2, 2],
      [3, 2],
      [3, 3],
      [2, 3],
    ],
    areaA: 1,
    areaB: 1,
    intersection: 0,
  },
];

const closed = (ring: Point[]): Figure => [[...ring, ...ring.slice(0, 1)]];

describe('planar polygons against shapely', () => {
  it.each(checks)('$name', ({ a, b, areaA, areaB, intersection }) => {
    expect(areaOfFigure(closed(a))).toBeCloseTo(areaA, 9);
    expect(areaOfFigure(closed(b))).toBeCloseTo(areaB, 9);
    expect(overlapArea(closed(a), closed(b))).toBeCloseTo(intersection, 9);
    expect(overlapArea(closed(b.toReversed()), closed(a))).toBeCloseTo(intersection, 9);
  });
});
