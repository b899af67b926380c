import fc from 'fast-check';
import { intersection } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { areaOfFigure, overlapArea } from '../../server/core/math/figure-overlap.js';
import type { Figure, Point } from '../../server/core/math/local-plane.js';

/** By the surveyor's formula (Gauss): the library gives rings, not areas. */
function ringArea(ring: readonly (readonly [number, number])[]): number {
  const twice = ring.slice(1).reduce((sum, [x, y], index) => {
    const [x0, y0] = ring[index] ?? [0, 0];
    return sum + x0 * y - x * y0;
  }, 0);
  return Math.abs(twice) / 2;
}

/** The clipping library polyclip-ts 0.16.8 (Martínez, Rueda & Feito 2009; exact arithmetic). */
function overlapByLibrary(a: Figure, b: Figure): number {
  const plain = (figure: Figure) =>
    figure.map((ring) => ring.map(([x, y]): [number, number] => [x, y]));
  return intersection(plain(a), plain(b)).reduce((sum, [outside = [], ...holes]) => {
    const taken = holes.reduce((less, hole) => less + ringArea(hole), 0);
    return sum + ringArea(outside) - taken;
  }, 0);
}

const ringOf = (reach: readonly number[], scale: number): Point[] => {
  const corners = reach.map((far, index): Point => {
    const angle = (2 * Math.PI * index) / reach.length;
    return [scale * far * Math.cos(angle), scale * far * Math.sin(angle)];
  });
  return [...corners, corners[0] ?? [0, 0]];
};

const moved = (figure: Figure, east: number, north: number): Figure =>
  figure.map((ring) => ring.map(([x, y]): Point => [x + east, y + north]));

/** Corners 1e-12 apart are beyond the library: now and then it throws. So they lie on a fine grid. */
const onGrid = (figure: Figure): Figure =>
  figure.map((ring) =>
    ring.map(([x, y]): Point => [Math.round(x * 1024) / 1024, Math.round(y * 1024) / 1024]),
  );

/** Concave stars, half of them with a hole of their own shape. */
const concave = fc
  .record({
    reach: fc.array(fc.double({ min: 0.4, max: 3, noNaN: true }), { minLength: 3, maxLength: 14 }),
    hole: fc.boolean(),
    east: fc.double({ min: -2, max: 2, noNaN: true }),
    north: fc.double({ min: -2, max: 2, noNaN: true }),
  })
  .map(({ reach, hole, east, north }): Figure => {
    const rings = [ringOf(reach, 1), ...(hole ? [ringOf(reach, 0.4).toReversed()] : [])];
    return onGrid(moved(rings, east, north));
  });

/** A comb of upright bars on whole numbers: sides of two such lie on each other again and again. */
const comb = fc
  .record({
    heights: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 7 }),
    east: fc.integer({ min: -4, max: 4 }),
    north: fc.integer({ min: -4, max: 4 }),
  })
  .map(({ heights, east, north }): Figure => {
    const top = heights.flatMap((height, index): Point[] => [
      [index, height],
      [index + 1, height],
    ]);
    return moved([[[0, 0], ...top, [heights.length, 0], [0, 0]]], east, north);
  });

describe('overlapArea against a clipping library', () => {
  it('is the same for concave figures with and without holes', () => {
    fc.assert(
      fc.property(concave, concave, (a, b) => {
        expect(overlapArea(a, b)).toBeCloseTo(overlapByLibrary(a, b), 8);
        expect(areaOfFigure(a)).toBeCloseTo(overlapByLibrary(a, a), 8);
      }),
      { numRuns: 400 },
    );
  });

  it('is the same where sides and corners lie on each other', () => {
    fc.assert(
      fc.property(comb, comb, (a, b) => {
        expect(overlapArea(a, b)).toBeCloseTo(overlapByLibrary(a, b), 9);
      }),
      { numRuns: 400 },
    );
  });
});
