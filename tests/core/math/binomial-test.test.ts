import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { conditionalBinomialTest } from '../../../server/core/math/binomial-test.js';
import { expectRelative } from '../../support/expect-relative.js';

/** Twice the upper tail of binomial(n, ½), summed exactly with whole numbers. */
function slowTwoSidedP(a: number, b: number): number {
  const n = a + b;
  let coefficient = 1n;
  let tail = 0n;
  for (let k = 0; k <= n; k += 1) {
    if (k >= Math.max(a, b)) tail += coefficient;
    coefficient = (coefficient * BigInt(n - k)) / BigInt(k + 1);
  }
  const scale = 10n ** 18n;
  return Math.min(1, Number((2n * tail * scale) / 2n ** BigInt(n)) / 1e18);
}

describe('conditionalBinomialTest', () => {
  it('gives the p-value of an exact binomial test (scipy 1.17.1 binomtest, p = 0.5)', () => {
    expectRelative(conditionalBinomialTest(2, 8), 0.109375, 1e-12);
    expectRelative(conditionalBinomialTest(5, 15), 0.04138946533203125, 1e-12);
    expectRelative(conditionalBinomialTest(0, 6), 0.03125, 1e-12);
    expect(conditionalBinomialTest(0, 0)).toBe(1);
    expect(conditionalBinomialTest(7, 7)).toBe(1);
  });

  it('agrees with the exact sum, is symmetric, and is a probability', () => {
    fc.assert(
      fc.property(fc.nat(60), fc.nat(60), (a, b) => {
        const p = conditionalBinomialTest(a, b);
        expect(Math.abs(p - slowTwoSidedP(a, b))).toBeLessThan(1e-13);
        expect(conditionalBinomialTest(b, a)).toBe(p);
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('refuses what is not a count', () => {
    expect(() => conditionalBinomialTest(1.5, 2)).toThrow('requires two whole numbers');
    expect(() => conditionalBinomialTest(-1, 2)).toThrow('requires two whole numbers');
  });
});
