import { describe, expect, it } from 'vitest';
import { randomFromState, seededRandom } from '../../../server/core/math/seeded-random.js';

describe('seeded random numbers', () => {
  it('gives the sequence of the reference implementation xoshiro128** 1.1', () => {
    // Test vector of the Rust crate rand_xoshiro, said there to be produced with
    // xoshiro128starstar.c of Blackman & Vigna; state 1, 2, 3, 4.
    const random = randomFromState([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, () => random.bits())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
      4258142804,
    ]);
  });

  it('gives the same numbers for the same seed and others for another', () => {
    const draw = (seed: number): number[] => {
      const random = seededRandom(seed);
      return Array.from({ length: 5 }, () => random.uniform());
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('spreads whole numbers evenly: chi-squared on 60,000 throws of a die', () => {
    const random = seededRandom(2027);
    const seen = [0, 0, 0, 0, 0, 0];
    for (let thrown = 0; thrown < 60_000; thrown += 1) {
      const face = random.integer(6);
      seen[face] = (seen[face] ?? NaN) + 1;
    }
    const chiSquared = seen.reduce((total, count) => total + (count - 10_000) ** 2 / 10_000, 0);
    expect(chiSquared).toBeLessThan(20.5); // 99.9 % point with 5 degrees of freedom
    expect(chiSquared).toBeGreaterThan(0.2); // and not too even to be chance
  });

  it('keeps uniform numbers in [0, 1) with the mean and variance they should have', () => {
    const random = seededRandom(1);
    const values = Array.from({ length: 100_000 }, () => random.uniform());
    const centre = values.reduce((a, b) => a + b, 0) / values.length;
    const variance = values.reduce((a, b) => a + (b - centre) ** 2, 0) / values.length;
    expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
    expect(Math.abs(centre - 0.5)).toBeLessThan(0.004);
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(0.001);
  });

  it('refuses a bad seed, state or bound', () => {
    expect(() => seededRandom(-1)).toThrow(RangeError);
    expect(() => randomFromState([0, 0, 0, 0])).toThrow(RangeError);
    expect(() => seededRandom(1).integer(0)).toThrow(RangeError);
  });
});
