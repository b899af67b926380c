import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleVariance, squaredDeviations, sum } from '../../../server/core/math/sum.js';

describe('sum', () => {
  it('is exact, then rounded once', () => {
    expect(sum([1e16, 1, -1e16])).toBe(1);
    expect(sum([1e308, 1e292, -1e308])).toBe(1e292);
    expect(sum([])).toBe(0);
    // Halfway cases of Python's test of math.fsum (test_math.py): the last bit goes to even, unless
    // something below the half decides.
    expect(sum([2 ** 53, -0.5, -(2 ** -54)])).toBe(2 ** 53 - 1);
    expect(sum([2 ** 53, 1, 2 ** -100])).toBe(2 ** 53 + 2);
    expect(sum([2 ** 53 + 10, 1, 2 ** -100])).toBe(2 ** 53 + 12);
    expect(sum([2 ** 53 - 4, 0.5, 2 ** -54])).toBe(2 ** 53 - 3);
    expect(sum([Infinity, 1])).toBe(Infinity);
    expect(sum([Infinity, -Infinity])).toBeNaN();
  });

  it('is the same in any order, and what whole-number arithmetic says', () => {
    const parts = fc.array(fc.tuple(fc.integer({ min: -(2 ** 40), max: 2 ** 40 }), fc.nat(60)));
    fc.assert(
      fc.property(parts, (given) => {
        const values = given.map(([whole, power]) => whole * 2 ** (power - 30));
        const exact = given.reduce(
          (all, [whole, power]) => all + (BigInt(whole) << BigInt(power)),
          0n,
        );
        expect(sum(values)).toBe(Number(exact) / 2 ** 30 + 0);
        expect(sum([...values].reverse())).toBe(sum(values));
      }),
    );
  });
});

describe('sum of a long list', () => {
  it('is the same in any order, and right to the last bit or next to it', () => {
    const lists = fc.array(fc.integer({ min: -(2 ** 45), max: 2 ** 45 }), {
      minLength: 33,
      maxLength: 400,
    });
    fc.assert(
      fc.property(lists, fc.integer({ min: -60, max: 60 }), (whole, power) => {
        const values = whole.map((each, place) => each * 2 ** (power - (place % 30)));
        const found = sum(values);
        const shuffled = values.map(
          (value, place) => values[(place * 7919) % values.length] ?? value,
        );
        if (values.length % 7919 !== 0) expect(sum(shuffled)).toBe(found);
        expect(sum(Float64Array.from(values).sort())).toBe(found);
        const exact = whole.reduce(
          (all, each, place) => all + (BigInt(each) << BigInt(29 - (place % 30))),
          0n,
        );
        expect(found).toBe((Number(exact) / 2 ** 29) * 2 ** power + 0);
      }),
    );
  });

  it('keeps what cancels, infinities and what is no number', () => {
    const many = new Array<number>(50).fill(0.1);
    expect(sum([...many, 1e20, 3, -1e20])).toBe(8);
    expect(sum([...many, 1e-300])).toBe(5);
    expect(sum(new Array<number>(50).fill(1e-300))).toBe(50 * 1e-300);
    expect(sum(new Array<number>(50).fill(0))).toBe(0);
    expect(sum([...many, Infinity])).toBe(Infinity);
    expect(sum([...many, NaN, 7])).toBeNaN();
    expect(sum(new Array<number>(50).fill(1e300))).toBe(50 * 1e300);
  });
});

describe('sampleVariance', () => {
  it('does not mind a large mean', () => {
    const values = [0.25, 0.5, 1.75].map((value) => value + 2 ** 30);
    expect(sampleVariance(values)).toBe(sampleVariance([0.25, 0.5, 1.75]));
    expect(squaredDeviations([7])).toBe(0);
    expect(() => sampleVariance([7])).toThrow('at least two');
  });
});
