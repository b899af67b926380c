import { describe, expect, it } from 'vitest';
import { scoreMornings, simulateMorning } from './simulated-morning.js';

/*
 * Held against made-up mornings whose truth is known (no outside source); tests/bench/double-counts.ts
 * prints more. The limits leave room for chance, not for a link that is as often wrong as right.
 */
describe('links on simulated mornings', () => {
  const notes = { time: 1, position: 1, heading: 0.9, destination: 0.5 };
  const mornings = Array.from({ length: 20 }, (_, seed) => simulateMorning(seed + 1, 50, notes));
  const score = scoreMornings(mornings);

  it('are right about as often as they say', () => {
    for (const half of [score.bins.slice(0, 5), score.bins.slice(5)]) {
      const shown = half.reduce((sum, bin) => sum + bin.shown, 0);
      const right = half.reduce((sum, bin) => sum + bin.right, 0);
      const expected = half.reduce((sum, bin) => sum + bin.expected, 0);
      expect(shown).toBeGreaterThan(30);
      expect(Math.abs(right - expected) / shown).toBeLessThan(0.12);
    }
  });

  it('are seldom wrong when proposed, and show most of what was counted twice', () => {
    expect(score.proposed).toBeGreaterThan(10);
    expect(score.proposedRight / score.proposed).toBeGreaterThanOrEqual(0.85);
    expect(score.shownRight / score.trueLinks).toBeGreaterThanOrEqual(0.8);
    expect(score.birdsTakenWrongly).toBeLessThan(score.birdsTakenRightly / 10);
  });
});
