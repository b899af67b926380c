import { describe, expect, it } from 'vitest';
import { clusterBootstrapIntervals } from '../../../server/core/agree/cluster-bootstrap.js';
import { normalQuantile } from '../../../server/core/math/normal.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

const share = (sums: Float64Array): number | null => (sums[0] ?? NaN) / (sums[1] ?? NaN);

/** Flocks of log-normal size, each with its own share of birds agreed on. */
function flocks(count: number, random: { uniform(): number }): Map<number, number>[] {
  const normal = (): number => normalQuantile(0.0001 + 0.9998 * random.uniform());
  return Array.from({ length: count }, () => {
    const size = 1 + Math.round(Math.exp(4 + normal()));
    const agreed = Math.round(size / (1 + Math.exp(-1.5 - normal())));
    return new Map([
      [0, agreed],
      [1, size],
    ]);
  });
}

describe('clusterBootstrapIntervals', () => {
  it('holds the true share in about nine of ten made-up counts of 12 flocks', () => {
    const random = seededRandom(11);
    const many = flocks(100_000, random);
    const add = (place: number): number =>
      many.reduce((total, flock) => total + (flock.get(place) ?? 0), 0);
    const truth = add(0) / add(1);
    let held = 0;
    for (let count = 0; count < 200; count += 1) {
      const [interval] = clusterBootstrapIntervals(flocks(12, random), 2, [share], 0.95);
      if (interval && interval.low <= truth && truth <= interval.high) held += 1;
    }
    expect(held).toBeGreaterThan(168);
    expect(held).toBeLessThan(200);
  });

  it('is much wider than birds taken as independent would make it', () => {
    const clusters = flocks(12, seededRandom(3));
    const [interval] = clusterBootstrapIntervals(clusters, 2, [share], 0.95);
    const birds = clusters.reduce((total, flock) => total + (flock.get(1) ?? 0), 0);
    const bySingleBirds = 2 * 1.96 * Math.sqrt(0.25 / birds);
    expect((interval?.high ?? NaN) - (interval?.low ?? NaN)).toBeGreaterThan(2 * bySingleBirds);
  });

  it('has no interval where many draws leave the statistic undefined', () => {
    const clusters = flocks(4, seededRandom(1));
    const [never, always] = clusterBootstrapIntervals(clusters, 2, [() => null, share], 0.95);
    expect(never).toBeNull();
    expect(always).not.toBeNull();
  });

  it('needs two clusters', () => {
    expect(() => clusterBootstrapIntervals(flocks(1, seededRandom(1)), 2, [share], 0.95)).toThrow(
      'at least two units',
    );
  });
});
