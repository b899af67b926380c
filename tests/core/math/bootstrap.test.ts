import { describe, expect, it } from 'vitest';
import {
  bcaInterval,
  bootstrapReplicates,
  expandedLevel,
  jackknifeAcceleration,
  percentileInterval,
} from '../../../server/core/math/bootstrap.js';
import { quantile } from '../../../server/core/math/quantile.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';
import { mean, sampleVariance, sum } from '../../../server/core/math/sum.js';
import { GPA, LAW_SCHOOL, LSAT } from '../../published/law-school.js';
import { expectRelative } from '../../support/expect-relative.js';

interface School {
  readonly score: number;
  readonly grade: number;
}
const schools: readonly School[] = LSAT.map((score, i) => ({ score, grade: GPA[i] ?? NaN }));

function correlation(drawn: readonly School[]): number | null {
  const [score, grade] = [mean(drawn.map((s) => s.score)), mean(drawn.map((s) => s.grade))];
  const product = sum(drawn.map((s) => (s.score - score) * (s.grade - grade)));
  const squares =
    sum(drawn.map((s) => (s.score - score) ** 2)) * sum(drawn.map((s) => (s.grade - grade) ** 2));
  return squares === 0 ? null : product / Math.sqrt(squares);
}

describe('bootstrap of the law school correlation', () => {
  const estimate = correlation(schools) ?? NaN;
  const jackknife = schools.map(
    (school) => correlation(schools.filter((other) => other !== school)) ?? NaN,
  );
  const replicates = bootstrapReplicates(schools, correlation, 20_000, seededRandom(1993));

  it('meets the values that no chance enters', () => {
    const n = schools.length;
    const centre = mean(jackknife);
    const squares = sum(jackknife.map((value) => (value - centre) ** 2));
    expectRelative(estimate, LAW_SCHOOL.estimate, 1e-9);
    expectRelative(Math.sqrt(((n - 1) / n) * squares), LAW_SCHOOL.jackknife_se, 1e-9);
    expectRelative(jackknifeAcceleration(jackknife), LAW_SCHOOL.acceleration_jackknife, 1e-9);
  });

  it('meets the published error and intervals as far as another generator can', () => {
    expect(Math.sqrt(sampleVariance([...replicates]))).toBeCloseTo(LAW_SCHOOL.boot_se, 2);
    const check = (found: { low: number; high: number }, [low, high]: readonly number[]): void => {
      expect(Math.abs(found.low - (low ?? NaN))).toBeLessThan(0.02);
      expect(Math.abs(found.high - (high ?? NaN))).toBeLessThan(0.02);
    };
    check(percentileInterval(replicates, 0.95), LAW_SCHOOL.percentile95);
    check(percentileInterval(replicates, 0.9), LAW_SCHOOL.percentile90);
    const bca = (level: number): { low: number; high: number } =>
      bcaInterval(replicates, estimate, jackknife, level) ?? { low: NaN, high: NaN };
    check(bca(0.95), LAW_SCHOOL.bca95);
    check(bca(0.9), LAW_SCHOOL.bca90);
  });

  it('is the same for the same seed', () => {
    const again = bootstrapReplicates(schools, correlation, 50, seededRandom(7));
    expect(again).toEqual(bootstrapReplicates(schools, correlation, 50, seededRandom(7)));
    expect(again).not.toEqual(bootstrapReplicates(schools, correlation, 50, seededRandom(8)));
  });
});

describe('bootstrap intervals', () => {
  it('leave out draws that do not define the statistic', () => {
    const twoKinds = bootstrapReplicates(
      [0, 1],
      (drawn) => (drawn.includes(0) ? null : 1),
      400,
      seededRandom(3),
    );
    expect(twoKinds.length).toBeGreaterThan(60);
    expect(twoKinds.length).toBeLessThan(140);
  });

  it('have no BCa limits where the estimate lies outside all replicates', () => {
    expect(bcaInterval(Float64Array.of(1, 2, 3), 4, [3, 4, 5], 0.95)).toBeNull();
    expect(jackknifeAcceleration([2, 2, 2])).toBe(0);
  });

  it('are widened for few units and hardly for many', () => {
    // Normal tail beyond 2.776 × √(5/4) = 3.104, twice: 0.0019 (t table, from memory).
    expect(expandedLevel(0.95, 5)).toBeCloseTo(0.9981, 4);
    expect(expandedLevel(0.95, 100_000)).toBeCloseTo(0.95, 4);
    expect(() => expandedLevel(0.95, 1)).toThrow('at least two units');
  });

  it('stand on type 7 quantiles (numpy.quantile default)', () => {
    expect(quantile([15, 20, 35, 40, 50], 0.4)).toBeCloseTo(29, 12);
    expect(() => quantile([], 0.5)).toThrow('at least one value');
    expect(() => quantile([1], 2)).toThrow('from 0 to 1');
  });

  it('add up the same in any order', () => {
    const values = [1e16, 3.3, -1e16, 0.1, 0.2, 7];
    expect(sum(values)).toBe(sum([...values].reverse()));
    expect(sum([])).toBe(0);
    expect(() => mean([])).toThrow('at least one value');
    expect(() => sampleVariance([1])).toThrow('at least two values');
  });
});
