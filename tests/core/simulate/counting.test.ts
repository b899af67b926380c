import { describe, expect, it } from 'vitest';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { chanceFrom } from '../../../server/core/simulate/chance.js';
import { countBirds, sampleRaft } from '../../../server/core/simulate/count-birds.js';
import { identify } from '../../../server/core/simulate/identify.js';
import { chanceToFind, type Observer } from '../../../server/core/simulate/observer.js';

const careful: Observer = {
  id: 'o1',
  habit: 'careful',
  ratio: 1,
  leavesCoarse: 0,
  pastTheLine: false,
};
const DRAWS = 20_000;

/** So many counts of one flock. */
function counts(birds: number, observer: Observer, seed: number): number[] {
  const chance = chanceFrom(seed);
  return Array.from(
    { length: DRAWS },
    () => countBirds(birds, observer, 1, defaultProtocol, chance).number,
  );
}

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe('what is written for a flock', () => {
  // 100,000 birds, so that writing whole fifths of a block does not matter.
  const blocks = counts(100_000, careful, 7);

  it('is right on median, with the coefficient of variation of the method', () => {
    expect((sorted(blocks)[DRAWS / 2] ?? 0) / 100_000).toBeCloseTo(1, 2);
    const mean = meanOf(blocks);
    const deviation = Math.sqrt(meanOf(blocks.map((each) => (each - mean) ** 2)));
    expect(deviation / mean).toBeCloseTo(0.2, 2);
  });

  it('stays within a factor of 1.73 of another count in 95 % of cases at a CV of 20 %', () => {
    // Check value of the method, derived: exp(1.96 · √2 · √ln 1.04) = 1.73.
    const other = counts(100_000, careful, 8);
    const within = blocks.filter((one, at) => {
      const ratio = one / (other[at] ?? 1);
      return ratio < 1.73 && ratio > 1 / 1.73;
    });
    // Four standard errors of a share of 0.95 in 20,000.
    expect(Math.abs(within.length / DRAWS - 0.95)).toBeLessThan(0.0062);
  });

  it('runs 11 % high on average where the higher of two is taken at a CV of 20 %', () => {
    // Check value of the method, derived for normal errors: 0.564 · 20 % = 11 %. Log-normal errors
    // that are right on median have a mean of 1.0198 to begin with.
    const other = counts(100_000, careful, 8);
    const highest = meanOf(blocks.map((one, at) => Math.max(one, other[at] ?? 0)));
    expect(highest / meanOf(blocks) - 1).toBeCloseTo(0.11, 2);
  });

  it('is the true number up to 19 birds one by one, and 5 % off up to 500', () => {
    expect(new Set(counts(19, careful, 1))).toEqual(new Set([19]));
    const few = counts(400, careful, 2);
    const mean = meanOf(few);
    const deviation = Math.sqrt(meanOf(few.map((each) => (each - mean) ** 2)));
    expect(deviation / mean).toBeCloseTo(0.05, 2);
  });

  it('is low by the observer’s own ratio, but not where numbers have no error', () => {
    const low = { ...careful, ratio: 0.71 };
    expect((sorted(counts(100_000, low, 3))[DRAWS / 2] ?? 0) / 100_000).toBeCloseTo(0.71, 2);
    expect(new Set(counts(12, low, 3))).toEqual(new Set([12]));
  });

  it('is by the observer’s habit: blocks above 500, or above 100 and guesses from 1,000', () => {
    const chance = chanceFrom(1);
    const method = (birds: number, habit: Observer['habit']) =>
      countBirds(birds, { ...careful, habit }, 1, defaultProtocol, chance).method;
    expect([500, 501].map((birds) => method(birds, 'careful'))).toEqual(['one-by-one', 'block']);
    expect([100, 101, 1000].map((birds) => method(birds, 'quick'))).toEqual([
      'one-by-one',
      'block',
      'guess',
    ]);
  });
});

describe('a proportion sample', () => {
  it('shares one total out by 100 birds', () => {
    const written = sampleRaft([600, 400], careful, 1, defaultProtocol, chanceFrom(5));
    const total = written.reduce((sum, { number }) => sum + number, 0);
    const share = ((written[0]?.number ?? 0) / total) * 100;
    expect(share).toBeCloseTo(Math.round(share), 0);
    expect(written.map(({ method }) => method)).toEqual(['sample', 'sample']);
  });

  it('has the multinomial error of 100 birds: a share of 0.6 with a deviation of 0.049', () => {
    const chance = chanceFrom(11);
    const shares = Array.from({ length: 4000 }, () => {
      const [one, other] = sampleRaft([600, 400], careful, 1, defaultProtocol, chance);
      return (one?.number ?? 0) / ((one?.number ?? 0) + (other?.number ?? 0));
    });
    const mean = meanOf(shares);
    expect(mean).toBeCloseTo(0.6, 2);
    expect(Math.sqrt(meanOf(shares.map((each) => (each - mean) ** 2)))).toBeCloseTo(0.049, 2);
  });
});

describe('detection', () => {
  it('is the given chance for a pair at half a kilometre (Pagano & Arnold 2009: 0.911)', () => {
    expect(chanceToFind(2, 0.5, 0.911)).toBeCloseTo(0.911, 12);
  });

  it('grows with the number of birds, falls with distance, and misses nothing at 1', () => {
    expect(chanceToFind(20, 0.5, 0.911)).toBeGreaterThan(0.98);
    // Odds of 0.911 / 0.089, halved (e^−0.7) by one kilometre more.
    expect(chanceToFind(2, 1.5, 0.911)).toBeCloseTo(1 / (1 + 0.089 / 0.911 / Math.exp(-0.7)), 12);
    expect(chanceToFind(1, 3, 1)).toBe(1);
  });
});

describe('identification', () => {
  it('keeps every bird, and takes species for look-alikes at the stated rate', () => {
    const chance = chanceFrom(3);
    let taken = 0;
    for (let draw = 0; draw < DRAWS; draw += 1) {
      const named = identify('Aythya affinis', 50, 1, 0.3, chance);
      expect(named.reduce((sum, { birds }) => sum + birds, 0)).toBe(50);
      if (named.some(({ outcome }) => outcome === 'misidentified')) taken += 1;
    }
    expect(taken / DRAWS).toBeCloseTo(0.08, 2);
  });

  it('never mistakes a species that has no look-alike, nor any with a rate of 0', () => {
    const chance = chanceFrom(4);
    for (let draw = 0; draw < 1000; draw += 1) {
      expect(identify('Fulica americana', 5, 5, 1, chance)).toMatchObject([{ outcome: 'right' }]);
      const [first] = identify('Aythya marila', 5, 0, 0, chance);
      expect(first?.candidates).toEqual(['Aythya marila']);
    }
  });
});
