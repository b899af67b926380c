import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derivativesOf } from '../../../server/core/math/derivatives.js';
import { minimise } from '../../../server/core/math/minimise.js';

/** Rosenbrock (1960, Comput. J. 3:175): least, 0, at (1, 1), at the end of a bent valley. */
const valley = ([x = NaN, y = NaN]: readonly number[]): number =>
  100 * (y - x * x) ** 2 + (1 - x) ** 2;

/** Powell (1962, Comput. J. 5:147): least, 0, at the origin, where its curvature is singular. */
const powell = ([a = NaN, b = NaN, c = NaN, d = NaN]: readonly number[]): number =>
  (a + 10 * b) ** 2 + 5 * (c - d) ** 2 + (b - 2 * c) ** 4 + 10 * (a - d) ** 4;

describe('minimise', () => {
  it('finds the ends of published valleys from their published starts', () => {
    const { at, settled } = minimise(valley, [-1.2, 1]);
    expect(settled).toBe(true);
    expect(at[0]).toBeCloseTo(1, 8);
    expect(at[1]).toBeCloseTo(1, 8);
    const flat = minimise(powell, [3, -1, 0, 1]);
    expect(flat.value).toBeLessThan(1e-9);
    flat.at.forEach((each) => expect(Math.abs(each)).toBeLessThan(0.02));
  });

  it('keeps out of places that are not allowed', () => {
    const { at } = minimise(([x = NaN]) => (x <= 0 ? NaN : x - Math.log(x)), [5]);
    expect(at[0]).toBeCloseTo(1, 8);
    expect(() => minimise(() => Infinity, [1])).toThrow('finite');
  });

  it('finds the centre of any bowl', () => {
    const bowl = fc.tuple(
      fc.double({ min: -5, max: 5, noNaN: true }),
      fc.double({ min: -5, max: 5, noNaN: true }),
    );
    fc.assert(
      fc.property(bowl, ([a, b]) => {
        const { at } = minimise(
          ([x = NaN, y = NaN]) => Math.cosh(x - a) + (y - b) ** 2 + (x - a) * (y - b),
          [0, 0],
        );
        expect(at[0]).toBeCloseTo(a, 6);
        expect(at[1]).toBeCloseTo(b, 6);
      }),
    );
  });
});

describe('derivativesOf', () => {
  it('has the gradient and curvature of a known function', () => {
    const { gradient, hessian } = derivativesOf(valley, [-1.2, 1]);
    expect(gradient[0]).toBeCloseTo(-215.6, 6);
    expect(gradient[1]).toBeCloseTo(-88, 6);
    [1330, 480, 480, 200].forEach((each, place) => expect(hessian[place]).toBeCloseTo(each, 3));
  });
});
