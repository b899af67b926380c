import { describe, expect, it } from 'vitest';
import {
  hCriticalValue,
  kCriticalValue,
  mandelConsistency,
} from '../../../server/core/agree/mandel-consistency.js';
import { normalQuantile } from '../../../server/core/math/normal.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

describe('mandelConsistency', () => {
  it('has critical values as ISO 5725-2 tabulates them', () => {
    // ISO 5725-2:1994, table 6, h at 1 % and 5 % (from memory); k for three laboratories of two values.
    const h = { 3: [1.15, 1.15], 5: [1.72, 1.57], 10: [2.18, 1.8] };
    for (const [laboratories, [one = NaN, five = NaN]] of Object.entries(h)) {
      expect(hCriticalValue(Number(laboratories), 0.01)).toBeCloseTo(one, 2);
      expect(hCriticalValue(Number(laboratories), 0.05)).toBeCloseTo(five, 2);
    }
    expect(kCriticalValue(1, 2, 0.01)).toBeCloseTo(1.71, 1);
    expect(kCriticalValue(1, 2, 0.05)).toBeCloseTo(1.65, 2);
  });

  it('questions the share of sound laboratories that it says, also with uneven numbers', () => {
    const random = seededRandom(5725);
    const normal = (): number => normalQuantile((random.integer(1 << 20) + 0.5) / (1 << 20));
    const sizes = [2, 3, 5, 9, 4];
    let [byH, byK, all] = [0, 0, 0];
    for (let trial = 0; trial < 1500; trial += 1) {
      // Means of equal precision, as h takes them: one value of each moved so that they are.
      const values = sizes.map((size) => {
        const own = Array.from({ length: size }, normal);
        const move = normal() - own.reduce((total, value) => total + value, 0) / size;
        return own.map((value) => value + move);
      });
      const found = mandelConsistency(values, 0.05);
      for (const { h, k, kCritical } of found?.laboratories ?? []) {
        all += 1;
        if (Math.abs(h ?? 0) > (found?.hCritical ?? NaN)) byH += 1;
        if ((k ?? 0) > (kCritical ?? NaN)) byK += 1;
      }
    }
    expect(byH / all).toBeGreaterThan(0.04);
    expect(byH / all).toBeLessThan(0.06);
    expect(byK / all).toBeGreaterThan(0.04);
    expect(byK / all).toBeLessThan(0.06);
  });

  it('leaves out what a single value cannot tell, and has no answer where means are equal', () => {
    const found = mandelConsistency([[1], [2], [4]], 0.01);
    expect(found?.laboratories[0]).toMatchObject({
      k: null,
      kCritical: null,
      standardDeviation: null,
    });
    expect(found?.repeatability).toBeNull();
    expect(
      mandelConsistency(
        [
          [1, 3],
          [2, 2],
          [0, 4],
        ],
        0.01,
      ),
    ).toBeNull();
    const still = mandelConsistency(
      [
        [1, 1],
        [2, 2],
        [4, 4],
      ],
      0.01,
    );
    expect(still?.laboratories[0]).toMatchObject({ k: null, standardDeviation: 0 });
    expect(() => mandelConsistency([[1], [2]], 0.01)).toThrow('three laboratories');
  });
});
