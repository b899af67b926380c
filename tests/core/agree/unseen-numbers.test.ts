import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverageNumber } from '../../../server/core/agree/detection/coverage-number.js';
import { jackknifeNumber } from '../../../server/core/agree/detection/jackknife-number.js';

const frequencies = fc.array(fc.nat(60), { maxLength: 14 });

describe('jackknifeNumber', () => {
  it('is what leaving out one observer at a time gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }), { maxLength: 40 }),
        (histories) => {
          const seenBy = (left: number): number =>
            histories.filter((history) => history.some((saw, place) => saw && place !== left))
              .length;
          const seen = seenBy(-1);
          const without = [0, 1, 2, 3, 4].map(seenBy).reduce((a, b) => a + b, 0) / 5;
          const times = [1, 2, 3, 4, 5].map(
            (k) => histories.filter((history) => history.filter(Boolean).length === k).length,
          );
          const expected = 5 * seen - 4 * without;
          expect(jackknifeNumber(times, 5, 1).value).toBeCloseTo(expected, 9);
        },
      ),
    );
  });

  it('is never below what was seen, and refuses too few observers', () => {
    expect(jackknifeNumber([0, 8, 2], 4, 2)).toMatchObject({ seen: 10, value: 10 });
    expect(jackknifeNumber([], 4, 1)).toMatchObject({ seen: 0, value: 0, standardError: 0 });
    expect(() => jackknifeNumber([3], 1, 2)).toThrow('2 observers or more');
    expect(() => jackknifeNumber([0.5], 3, 1)).toThrow('whole numbers');
  });
});

describe('coverageNumber', () => {
  it('is at least what was seen, with an interval about it', () => {
    fc.assert(
      fc.property(frequencies, (sample) => {
        const found = coverageNumber(sample);
        const others = sample.slice(1, 10).some((each) => each > 0);
        if (found === null) {
          expect(others).toBe(false);
          return;
        }
        expect(found.value).toBeGreaterThanOrEqual(found.seen - 1e-9);
        expect(found.interval.low).toBeGreaterThanOrEqual(found.seen - 1e-9);
        expect(found.interval.high).toBeGreaterThanOrEqual(found.value - 1e-9);
      }),
    );
  });

  it('has nothing to say where nothing is covered, and nothing to add where all is', () => {
    expect(coverageNumber([4])).toBeNull();
    expect(coverageNumber([4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7])).toBeNull();
    expect(coverageNumber([0, 4, 3])).toMatchObject({ coverage: 1, value: 7, standardError: 0 });
    expect(coverageNumber([])).toMatchObject({ seen: 0, value: 0 });
    // Two seen once, one twice: 3 kinds, 4 birds, half of them covered; no more differing than chance.
    expect(coverageNumber([2, 1])?.value).toBeCloseTo(6, 12);
    expect(() => coverageNumber([-1])).toThrow('at least 0');
  });

  it('finds how many kinds there were where all are as common', () => {
    // 100 kinds with a Poisson number of mean 2 each: 27.07 once, 27.07 twice, and so on.
    const expected = Array.from({ length: 10 }, (_, i) => {
      let chance = Math.exp(-2);
      for (let k = 1; k <= i + 1; k += 1) chance *= 2 / k;
      return Math.round(100_000 * chance);
    });
    const found = coverageNumber(expected);
    expect(Math.abs((found?.value ?? NaN) / 100_000 - 1)).toBeLessThan(1e-3);
    expect(found?.standardError).toBeGreaterThan(0);
  });
});
