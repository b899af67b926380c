import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median } from '../../../server/core/consensus/median.js';
import { robustMean } from '../../../server/core/consensus/robust-mean.js';
import { ABBEY, CREOSOTE } from '../../published/algorithm-a.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('robustMean', () => {
  it.each([
    ['creosote', CREOSOTE],
    ['nickel in syenite', ABBEY],
  ])('agrees with Algorithm A on %s', (_name, { x, mean, standardDeviation }) => {
    const found = robustMean(x);
    expectRelative(found.mean, mean, 1e-9);
    expectRelative(found.standardDeviation, standardDeviation, 1e-9);
    expectRelative(found.standardError, (1.25 * standardDeviation) / Math.sqrt(x.length), 1e-9);
  });

  it('moves little for one wild count', () => {
    expect(robustMean([100, 104, 96, 101, 5000]).mean).toBeLessThan(115);
  });

  it('does not get stuck where more than half of the counts are equal', () => {
    const found = robustMean([10, 10, 10, 10, 10, 12, 60]);
    expect(found.mean).toBeGreaterThan(10);
    expect(found.mean).toBeLessThan(11);
  });

  it('gives a single count back', () => {
    expect(robustMean([7])).toEqual({ mean: 7, standardDeviation: 0, standardError: 0 });
    expect(() => robustMean([])).toThrow(RangeError);
  });

  it('keeps order out, stays among the values, and moves with them', () => {
    const counts = fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(counts, fc.integer({ min: 1, max: 1000 }), (values, shift) => {
        const found = robustMean(Object.freeze(values));
        expect(robustMean([...values].reverse())).toEqual(found);
        expect(found.mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(found.mean).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
        const moved = robustMean(values.map((value) => value + shift));
        expect(Math.abs(moved.mean - shift - found.mean)).toBeLessThan(1e-6 * (1 + found.mean));
        expect(median([...values].reverse())).toBe(median(values));
      }),
    );
  });
});
