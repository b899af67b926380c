import { describe, expect, it } from 'vitest';
import type { CompiledLine, Posting } from '../../../server/core/model/result.js';
import { scoreTotals } from '../../../server/core/score/total-score.js';
import type { TrueFlock } from '../../../server/core/score/truth.js';

const line = (taxon: string, number: number): CompiledLine => ({
  taxon,
  candidates: [taxon],
  number,
  low: number,
  high: number,
  atLeast: number,
  atMost: number,
  flyingThrough: 3,
  presentNotCounted: false,
});

const posting = (from: string, to: string, number: number): Posting => ({
  id: 'p1',
  from,
  to,
  taxon: 'Aythya marila',
  number,
  because: { kind: 'link', ref: 'a~b' },
});

/** 40 scaup in two sections, taken off once, beside 10 mallards; 5 scaup that nobody wrote down. */
const result = {
  compiled: [line('Anas platyrhynchos', 10), line('Aythya marila', 41)],
  ledger: [
    posting('consensus/s1:w1/g1', 'compiled/w1', 41),
    posting('consensus/s2:w1/g1', 'double-count/a~b', 39),
  ],
};
const flocks: readonly TrueFlock[] = [
  { inSight: true, parts: [{ species: 'Aythya marila', birds: 40, lines: ['a:1', 'c:1'] }] },
  { inSight: true, parts: [{ species: 'Aythya marila', birds: 5, lines: [] }] },
  { inSight: false, parts: [{ species: 'Anas platyrhynchos', birds: 10, lines: ['a:2'] }] },
];

describe('totals against the truth', () => {
  it('are of the compiled count before and after what links took off, and of two truths', () => {
    expect(scoreTotals(result, { flocks })).toEqual({
      inSight: 45,
      recorded: 50,
      raw: 90,
      afterProposals: 51,
    });
  });

  it('are held against nothing where the flocks are not known', () => {
    const { inSight, recorded } = scoreTotals(result, { flocks: null });
    expect([inSight, recorded]).toEqual([null, null]);
  });
});
