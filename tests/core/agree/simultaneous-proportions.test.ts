import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  goodmanIntervals,
  sisonGlazIntervals,
} from '../../../server/core/agree/simultaneous-proportions.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

const BOTH = [goodmanIntervals, sisonGlazIntervals];
const counts = fc
  .array(fc.nat(300), { minLength: 2, maxLength: 9 })
  .filter((each) => each.some((count) => count > 0));

describe('simultaneous intervals for shares', () => {
  it('hold the shares, lie from 0 to 1, and go with their category in any order', () => {
    fc.assert(
      fc.property(counts, (sample) => {
        const n = sample.reduce((total, count) => total + count, 0);
        for (const intervalsOf of BOTH) {
          const found = intervalsOf(Object.freeze(sample));
          expect(intervalsOf([...sample].reverse()).map(({ low }) => low.toFixed(9))).toEqual(
            found.map(({ low }) => low.toFixed(9)).reverse(),
          );
          found.forEach(({ low, high }, category) => {
            const share = (sample[category] ?? NaN) / n;
            expect(low).toBeGreaterThanOrEqual(0);
            expect(low).toBeLessThanOrEqual(share);
            expect(high).toBeGreaterThanOrEqual(share);
            expect(high).toBeLessThanOrEqual(1);
          });
        }
      }),
    );
  });

  it('hold all shares of made-up samples about as often as they say', () => {
    const random = seededRandom(1995);
    const shares = [0.3, 0.2, 0.15, 0.12, 0.1, 0.08, 0.05];
    const samples = 600;
    const held = BOTH.map(() => 0);
    for (let turn = 0; turn < samples; turn += 1) {
      const sample = shares.map(() => 0);
      for (let bird = 0; bird < 200; bird += 1) {
        let [at, left] = [0, random.uniform() - (shares[0] ?? 0)];
        while (left > 0 && at < shares.length - 1) left -= shares[(at += 1)] ?? 0;
        sample[at] = (sample[at] ?? 0) + 1;
      }
      BOTH.forEach((intervalsOf, place) => {
        const all = intervalsOf(sample).every(
          ({ low, high }, k) => low <= (shares[k] ?? NaN) && (shares[k] ?? NaN) <= high,
        );
        if (all) held[place] = (held[place] ?? 0) + 1;
      });
    }
    // 95 % of 600 ± three standard errors (16); Goodman's hold more.
    expect(held[0]).toBeGreaterThan(554);
    expect(held[1]).toBeGreaterThan(546);
    expect(held[1]).toBeLessThan(591);
  });

  it('do with large samples and with one category only', () => {
    const [large] = sisonGlazIntervals([600_000, 400_000]);
    // Two categories are one share, ± 1.96 √(.6 × .4 / 10⁶) = ± .00096; the expansion makes it .00101.
    expect(Math.abs((large?.low ?? NaN) - (0.6 - 0.00096))).toBeLessThan(6e-5);
    expect(Math.abs((large?.high ?? NaN) - (0.6 + 0.00096))).toBeLessThan(6e-5);
    for (const intervalsOf of BOTH) {
      const [all, none] = intervalsOf([50, 0]);
      expect(all?.high).toBe(1);
      expect(none?.low).toBe(0);
      expect(none?.high).toBeGreaterThan(0);
      expect(() => intervalsOf([0, 0])).toThrow('not all 0');
      expect(() => intervalsOf([4])).toThrow('two or more categories');
      expect(() => intervalsOf([1.5, 2])).toThrow('whole counts');
    }
  });
});
