import { describe, expect, it } from 'vitest';
import { fitNegativeBinomial } from '../../../server/core/math/fit-negative-binomial.js';
import { digamma } from '../../../server/core/math/digamma.js';
import { logGamma } from '../../../server/core/math/gamma.js';
import {
  chanceOfAtLeast,
  chanceOfAtMost,
  lowerQuantile,
  upperQuantile,
} from '../../../server/core/math/negative-binomial.js';
import { MITES } from '../../published/negative-binomial-mites.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('fitNegativeBinomial', () => {
  it('fits the mites of Bliss and Fisher', () => {
    const counts = MITES.frequencies.flatMap((leaves, mites) =>
      Array.from({ length: leaves }, () => mites),
    );
    const { mean, size } = fitNegativeBinomial(counts);
    expectRelative(mean, MITES.expected.mean, 1e-10);
    expectRelative(size, MITES.expected.size, 1e-8);
    const logLikelihood = counts.reduce(
      (total, count) =>
        total +
        logGamma(size + count) -
        logGamma(size) -
        logGamma(count + 1) +
        size * Math.log(size / (size + mean)) +
        count * Math.log(mean / (size + mean)),
      0,
    );
    expectRelative(logLikelihood, MITES.expected.logLikelihood, 1e-9);
  });

  it('is Poisson where counts vary no more than Poisson counts', () => {
    expect(fitNegativeBinomial([4, 5, 6, 5])).toEqual({ mean: 5, size: Infinity });
    expect(fitNegativeBinomial([7])).toEqual({ mean: 7, size: Infinity });
    expect(fitNegativeBinomial([0, 0, 0])).toEqual({ mean: 0, size: Infinity });
  });
});

describe('tails of the negative binomial distribution', () => {
  it('add up, term by term, with the probabilities of single numbers', () => {
    // Γ(size + x) / (Γ(size) x!) · pˢ qˣ, p = size / (size + mean); Poisson e⁻ᵐ mˣ / x!.
    for (const distribution of [
      { mean: 3.2, size: 1.4 },
      { mean: 40, size: 0.5 },
      { mean: 6, size: Infinity },
    ]) {
      const { mean, size } = distribution;
      const chanceOf = (x: number): number =>
        size === Infinity
          ? Math.exp(x * Math.log(mean) - mean - logGamma(x + 1))
          : Math.exp(
              logGamma(size + x) -
                logGamma(size) -
                logGamma(x + 1) +
                size * Math.log(size / (size + mean)) +
                x * Math.log(mean / (size + mean)),
            );
      let below = 0;
      for (let x = 0; x < 60; x += 1) {
        expect(chanceOfAtLeast(x, distribution)).toBeCloseTo(1 - below, 12);
        below += chanceOf(x);
        expectRelative(chanceOfAtMost(x, distribution), below, 1e-10);
      }
    }
  });

  it('have the quantiles that qnbinom and qpois of R have by definition', () => {
    const distribution = { mean: 12, size: 2 };
    const [low, high] = [lowerQuantile(0.025, distribution), upperQuantile(0.025, distribution)];
    expect(chanceOfAtMost(low, distribution)).toBeGreaterThan(0.025);
    expect(chanceOfAtMost(low - 1, distribution)).toBeLessThanOrEqual(0.025);
    expect(chanceOfAtLeast(high + 1, distribution)).toBeLessThanOrEqual(0.025);
    expect(chanceOfAtLeast(high, distribution)).toBeGreaterThan(0.025);
    // Poisson of mean 3: P(X ≤ 0) = 0.0498, P(X ≤ 6) = 0.9665, P(X ≤ 7) = 0.9881 (printed tables).
    expect(lowerQuantile(0.025, { mean: 3, size: Infinity })).toBe(0);
    expect(upperQuantile(0.025, { mean: 3, size: Infinity })).toBe(7);
  });
});

describe('digamma', () => {
  it('has the values of Abramowitz and Stegun, table 6.1 and 6.3.2 to 6.3.3', () => {
    expectRelative(digamma(1), -0.5772156649015329, 1e-14);
    expectRelative(digamma(0.5), -0.5772156649015329 - 2 * Math.log(2), 1e-14);
    // ψ(n) = −γ + 1 + 1/2 + … + 1/(n − 1).
    const harmonic = Array.from({ length: 99 }, (_, k) => 1 / (k + 1)).reduce((a, b) => a + b, 0);
    expectRelative(digamma(100), harmonic - 0.5772156649015329, 1e-14);
  });

  it('refuses what has no value', () => {
    expect(() => digamma(0)).toThrow(RangeError);
  });
});
