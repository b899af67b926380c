import { describe, expect, it } from 'vitest';
import { logDeviation } from '../../server/core/compare/counting-error.js';
import { countSpread } from '../../server/core/compare/count-spread.js';
import { seededRandom } from '../../server/core/math/seeded-random.js';
import { normalQuantile } from '../../server/core/math/normal.js';
import type { Cell, Consensus } from '../../server/core/model/result.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import { reconcile } from '../../server/core/reconcile.js';
import { aCount, aProtocol, aTally, type ShortLine } from './a-count.js';

const settle = (
  numbers: readonly number[],
  more: Partial<Protocol> = {},
  method = 'block',
): Consensus => {
  const line = (number: number): ShortLine => [
    'Greater Scaup',
    number,
    { method: method === 'block' ? 'block' : 'one-by-one' },
  ];
  const result = reconcile(
    aCount(numbers.map((number, index) => aTally(`o${index + 1}`, [line(number)]))),
    [],
    aProtocol(more),
  );
  const cell: Cell | undefined = result.cells[0];
  const consensus = cell?.groups[0]?.consensus;
  if (consensus === undefined) throw new Error('nothing was settled');
  return consensus;
};

describe('consensus by each rule', () => {
  it('settles 100, 120 and 200 by the rule that the protocol names', () => {
    expect(settle([100, 120, 200], { rule: 'mean' }).number).toBe(140);
    expect(settle([100, 120, 200], { rule: 'median' }).number).toBe(120);
    expect(settle([100, 120, 200], { rule: 'highest' }).number).toBe(200);
    expect(settle([100, 120, 200], { rule: 'designated', designated: { s1: 'o2' } }).number).toBe(
      120,
    );
  });

  it('shows all rules side by side', () => {
    expect(settle([100, 120, 200], { designated: { '*': 'o1' } }).byRule).toMatchObject({
      designated: 100,
      highest: 200,
      mean: 140,
      median: 120,
    });
  });

  it('takes the mean where the designated observer has no tally of the place', () => {
    const consensus = settle([100, 120], { rule: 'designated', designated: { s1: 'o4' } });
    expect(consensus).toMatchObject({ rule: 'mean', number: 110 });
  });

  it('reads a zero as missed by default and as a claim of absence where the protocol says so', () => {
    expect(settle([60, 0], { zeros: 'missed' }).number).toBe(60);
    expect(settle([60, 0], { zeros: 'absent' })).toMatchObject({ number: 30, low: 0 });
  });

  it('keeps exactly the number on which two observers agree to the bird', () => {
    for (const rule of [
      'mean',
      'median',
      'highest',
      'random-effects',
      'weighted-mean',
      'robust-mean',
    ] as const) {
      expect(settle([417, 417], { rule }).number).toBe(417);
    }
  });

  it('gives a bird-by-bird count under 20 no error, and one block count its own', () => {
    expect(settle([12], {}, 'one-by-one')).toMatchObject({ number: 12, low: 12, high: 12 });
    // 400 · e^(±1.96 · √ln 1.04) = 400 / 1.474 and 400 · 1.474
    expect(settle([400])).toMatchObject({ number: 400, low: 271, high: 590 });
  });

  it('never gets less sure by a second observer who says the same', () => {
    for (const number of [15, 40, 400, 5000]) {
      const one = settle([number]);
      const two = settle([number, number]);
      expect(two.low).toBeGreaterThanOrEqual(one.low);
      expect(two.high).toBeLessThanOrEqual(one.high);
    }
  });
});

describe('counting error', () => {
  it('keeps two honest 20 % counts of one flock within a factor of 1.73 in 95 % of cases', () => {
    // Derived: e^(z · √2 · σ) with σ = √ln(1 + 0.2²) and the normal 97.5 % point.
    const factor = Math.exp(normalQuantile(0.975) * Math.SQRT2 * logDeviation(0.2));
    expect(factor).toBeCloseTo(1.73, 2);
  });

  it('makes the higher of two such counts run 11 % high on average', () => {
    // Derived: E max of two = 0.564 standard deviations above the mean; held against a simulation.
    const random = seededRandom(7);
    const sigma = logDeviation(0.2);
    const draw = (): number => Math.exp(sigma * normalQuantile(random.uniform()) - sigma ** 2 / 2);
    let sum = 0;
    const runs = 40_000;
    for (let run = 0; run < runs; run += 1) sum += Math.max(draw(), draw());
    expect(sum / runs).toBeCloseTo(1.11, 1.7);
    expect(0.564 * 0.2).toBeCloseTo(0.113, 3);
  });

  it('questions a spread at two standard deviations and calls it serious at three (ISO 13528)', () => {
    // Two 20 % counts differ by √(0.04 + 0.04) = 0.283 on the ln scale: 2 of that is a factor 1.76.
    expect(countSpread(1760, 1000, 0.2, 0.2)).toBeCloseTo(2, 2);
    expect(countSpread(2337, 1000, 0.2, 0.2)).toBeCloseTo(3, 2);
  });

  it('tests small counts exactly: 3 against 15 is questioned, 8 against 12 is not', () => {
    // Two-sided binomial with p = 1/2: 2 · P(X ≤ 3 | 18) = 0.0075; 2 · P(X ≤ 8 | 20) = 0.50.
    expect(countSpread(3, 15, 0, 0)).toBeGreaterThan(2);
    expect(countSpread(8, 12, 0, 0)).toBeLessThan(1);
  });
});
