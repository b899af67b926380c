import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeRaft } from '../../../server/core/raft/compose-raft.js';
import { halfWidthAfter, moreSamplesFor } from '../../../server/core/raft/more-samples.js';
import { raftLines } from '../../../server/core/raft/raft-lines.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';
import { smallCountsOf, type PatchyRaft } from './patchy-raft.js';

const GREATER = ['Aythya marila'];
const LESSER = ['Aythya affinis'];
const SCAUP = ['Aythya affinis', 'Aythya marila'];

const composed = (samples: Parameters<typeof composeRaft>[0]) => {
  const composition = composeRaft(samples);
  if (composition === null) throw new Error('the raft has scanned birds');
  return composition;
};

describe('a raft’s lines', () => {
  it('leave what was not identified at its pair, and add up to the total', () => {
    const composition = composed([
      [
        { candidates: GREATER, number: 20 },
        { candidates: LESSER, number: 7 },
        { candidates: SCAUP, number: 13 },
      ],
    ]);
    const lines = raftLines(500, 0.2, composition);
    expect(lines.map(({ candidates, number }) => [candidates, number])).toEqual([
      [GREATER, 250],
      // 162.5 and 87.5: the bird that is over goes to what more were scanned of.
      [SCAUP, 163],
      [LESSER, 87],
    ]);
  });

  it('have the total’s error alone where one kind was seen: a factor of exp(1.96 √ln(1 + 0.2²))', () => {
    // Method section 3.3: at 20 % a count stays within a factor of 1.474 of the truth in 95 % of cases
    // (1.73 between two of them); computed by hand, √ln 1.04 = 0.19804, × 1.95996 = 0.38815.
    const [line] = raftLines(1000, 0.2, composed([[{ candidates: GREATER, number: 40 }]]));
    expect(line?.number).toBe(1000);
    expect(line?.high).toBe(Math.ceil(1000 * Math.exp(0.38815)));
    expect(line?.low).toBeLessThan(1000 * Math.exp(-0.38815));
  });

  it('never deny what was seen in a scan, while there are birds enough', () => {
    const composition = composed([
      [
        { candidates: GREATER, number: 98 },
        { candidates: LESSER, number: 1 },
        { candidates: SCAUP, number: 1 },
      ],
    ]);
    expect(raftLines(20, 0, composition).map(({ number }) => number)).toEqual([18, 1, 1]);
    expect(raftLines(2, 0, composition).map(({ number }) => number)).toEqual([2, 0, 0]);
  });

  const kinds = [['a'], ['b'], ['c'], ['a', 'b'], ['b', 'c']];
  const anyRaft = fc.record({
    total: fc.integer({ min: 0, max: 20_000 }),
    cv: fc.constantFrom(0, 0.05, 0.2, 0.5),
    numbers: fc
      .array(fc.integer({ min: 0, max: 60 }), { minLength: 5, maxLength: 5 })
      .filter((numbers) => numbers.some((each) => each > 0)),
  });
  it('add up to the total exactly, each within its interval, whatever the raft', () => {
    fc.assert(
      fc.property(anyRaft, ({ total, cv, numbers }) => {
        const sample = kinds.map((candidates, k) => ({ candidates, number: numbers[k] ?? 0 }));
        const lines = raftLines(total, cv, composed([sample]));
        expect(lines.reduce((sum, { number }) => sum + number, 0)).toBe(total);
        for (const { number, low, high } of lines) {
          expect(Number.isInteger(number)).toBe(true);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(number);
          expect(high).toBeGreaterThanOrEqual(number);
          if (total >= lines.length) expect(number).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('hold the true number about as often as they say, with the error of the total in it', () => {
    const raft: PatchyRaft = {
      kinds: [
        [['a'], 0.65],
        [['b'], 0.35],
      ],
      alikeness: 0.06,
    };
    const random = seededRandom(20270116);
    const runs = 400;
    let inside = 0;
    for (let run = 0; run < runs; run += 1) {
      // Sum of twelve uniform numbers less six: near enough standard normal.
      const normal = Array.from({ length: 12 }, () => random.uniform()).reduce((a, b) => a + b) - 6;
      const total = Math.round(2000 * Math.exp(Math.sqrt(Math.log(1.04)) * normal));
      const line = raftLines(total, 0.2, composed(smallCountsOf(raft, 5, 40, run))).find(
        ({ candidates }) => candidates[0] === 'a',
      );
      if (line !== undefined && line.low <= 1300 && 1300 <= line.high) inside += 1;
    }
    expect(inside / runs).toBeGreaterThan(0.92);
    expect(inside / runs).toBeLessThan(0.995);
  });
});

describe('how many more samples', () => {
  const raft: PatchyRaft = {
    kinds: [
      [['a'], 0.5],
      [['b'], 0.3],
      [['c'], 0.2],
    ],
    alikeness: 0.05,
  };

  it('is the least that brings every share to the width that was asked for', () => {
    for (let run = 0; run < 20; run += 1) {
      const composition = composed(smallCountsOf(raft, 4, 30, run));
      for (const width of [0.2, 0.1, 0.05, 0.03]) {
        const more = moreSamplesFor(composition, width);
        if (more === null) expect(halfWidthAfter(composition, 200)).toBeGreaterThan(width);
        else {
          expect(halfWidthAfter(composition, more)).toBeLessThanOrEqual(width);
          if (more > 0) expect(halfWidthAfter(composition, more - 1)).toBeGreaterThan(width);
        }
      }
    }
  });

  it('is about right when they are made: on the mean over rafts, the width is what was promised', () => {
    let [promised, found] = [0, 0];
    for (let run = 0; run < 120; run += 1) {
      const all = smallCountsOf(raft, 16, 30, run);
      promised += halfWidthAfter(composed(all.slice(0, 8)), 8);
      found += halfWidthAfter(composed(all), 0);
    }
    expect(found / promised).toBeGreaterThan(0.85);
    expect(found / promised).toBeLessThan(1.1);
  });

  it('is none where the shares are known well enough already', () => {
    expect(moreSamplesFor(composed(smallCountsOf(raft, 30, 40, 1)), 0.2)).toBe(0);
  });
});
