import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logBesselI0 } from '../../../server/core/math/bessel.js';
import { vonMisesLogDensity } from '../../../server/core/math/von-mises.js';

describe('logBesselI0', () => {
  // e^−x I₀(x) to 10 digits as Abramowitz & Stegun (1964) print it in Table 9.8 (from memory;
  // recomputed with 40 digits from the power series 9.6.12).
  it.each([
    [0, 1],
    [0.1, 0.9071009258],
    [1, 0.4657596076],
    [2, 0.3085083226],
    [5, 0.1835408126],
    [10, 0.1278333372],
  ])('e^−x I₀(x) at %d', (x, expected) => {
    expect(Math.exp(logBesselI0(x) - x)).toBeCloseTo(expected, 9);
  });

  it('agrees with the power series summed with 40 digits (computed, no publication)', () => {
    expect(logBesselI0(50)).toBeCloseTo(47.127575501871805, 11);
    expect(logBesselI0(200)).toBeCloseTo(196.43252935422347, 10);
  });

  it('needs x of at least 0', () => {
    expect(() => logBesselI0(-1)).toThrow('at least 0');
    expect(() => logBesselI0(NaN)).toThrow('at least 0');
  });
});

describe('vonMisesLogDensity', () => {
  it('is a density: round the circle it sums to 1', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 60, noNaN: true }), (concentration) => {
        const steps = 720;
        let mass = 0;
        for (let step = 0; step < steps; step += 1) {
          mass += Math.exp(vonMisesLogDensity(step / 2, concentration));
        }
        expect((mass * 2 * Math.PI) / steps).toBeCloseTo(1, 10);
      }),
    );
  });

  it('falls off alike to both sides, whole turns aside', () => {
    expect(vonMisesLogDensity(30, 4)).toBeCloseTo(vonMisesLogDensity(-30, 4), 12);
    expect(vonMisesLogDensity(30, 4)).toBeCloseTo(vonMisesLogDensity(390, 4), 12);
    expect(vonMisesLogDensity(30, 4)).toBeGreaterThan(vonMisesLogDensity(60, 4));
  });
});
