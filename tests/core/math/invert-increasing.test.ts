import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  invertIncreasing,
  invertIncreasingFromZero,
} from '../../../server/core/math/invert-increasing.js';

/** The slow and obvious way. */
function byHalves(of: (x: number) => number, target: number, low: number, high: number): number {
  for (let [below, above] = [low, high]; ;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return middle;
    if (of(middle) < target) below = middle;
    else above = middle;
  }
}

const SHAPES: Readonly<Record<string, (x: number) => number>> = {
  line: (x) => 3 * x - 1,
  'flat, then steep': (x) => x ** 21,
  'steep, then flat': (x) => Math.tanh(40 * x),
  'steep at the end': (x) => -Math.log1p(-x),
  step: (x) => (x > 0.3 ? 1 : -1),
};

describe('invertIncreasing', () => {
  it.each(Object.keys(SHAPES))('finds the place that halving finds, sooner: %s', (shape) => {
    const of = SHAPES[shape] ?? ((x) => x);
    let [asked, askedByHalves] = [0, 0];
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 0.999, noNaN: true }), (where) => {
        const target = shape === 'step' ? 0 : of(where);
        const found = invertIncreasing((x) => ((asked += 1), of(x)), target, 0, 1);
        const plain = byHalves((x) => ((askedByHalves += 1), of(x)), target, 0, 1);
        // Where the function is level over several numbers, any of them will do.
        if (shape === 'step') expect(found).toBeCloseTo(plain, 14);
        else
          expect(Math.abs(of(found) - target)).toBeLessThanOrEqual(
            Math.abs(of(plain) - target) + 1e-14 * Math.abs(target),
          );
      }),
    );
    if (shape === 'step') expect(asked).toBeLessThan(1.3 * askedByHalves);
    else expect(asked).toBeLessThan(0.7 * askedByHalves);
  });

  it('stays between its ends where the target is not', () => {
    expect(invertIncreasing((x) => x, 2, 0, 1)).toBeCloseTo(1, 15);
    expect(invertIncreasing((x) => x, -2, 0, 1)).toBe(0);
    expect(invertIncreasing(() => -Infinity, 0, 0, 1)).toBeCloseTo(1, 15);
  });

  it('goes as far as it must from 0', () => {
    expect(invertIncreasingFromZero((x) => x, 1000)).toBeCloseTo(1000, 10);
    expect(invertIncreasingFromZero((x) => -1 / x, -1e-12)).toBeCloseTo(1e12, -1);
    expect(invertIncreasingFromZero(Math.sqrt, 1e-8) / 1e-16).toBeCloseTo(1, 9);
  });
});
