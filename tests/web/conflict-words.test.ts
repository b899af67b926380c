import { describe, expect, test } from 'vitest';
import { conflictSentences } from '../../web/src/reviews/conflict-words.js';

const witness = 'Ann has at least 85 Greater Scaup, but Ben leaves room for at most 40.';
const two = { feasible: false, birdsInConflict: 65, witness, tallies: [1, 2] };

describe('why no single truth fits', () => {
  test('says how many birds at least, and why', () => {
    const sentences = conflictSentences(two);
    expect(sentences[0]).toContain('at least 65 birds must be wrong');
    expect(sentences[1]).toBe(witness);
    expect(sentences).toHaveLength(3);
    expect(sentences[2]).not.toContain('each observer');
  });

  test('of more than two tallies, says that a bird counts for each observer who has it wrong', () => {
    const sentences = conflictSentences({ ...two, tallies: [1, 2, 3] });
    expect(sentences[2]).toContain('once for each observer who has it wrong');
  });

  test('says nothing where one truth fits, and nothing more where no reason is given', () => {
    expect(conflictSentences({ ...two, feasible: true, birdsInConflict: 0 })).toEqual([]);
    expect(conflictSentences({ ...two, birdsInConflict: 1, witness: null })).toEqual([
      expect.stringContaining('at least 1 bird must be wrong'),
      expect.stringContaining('missed, added or misnamed'),
    ]);
  });
});
