import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBinomialMixture } from '../../../server/core/agree/detection/binomial-mixture.js';
import { chaoLowerBound } from '../../../server/core/agree/detection/chao-lower-bound.js';
import { fitHuggins } from '../../../server/core/agree/detection/huggins.js';
import { estimateFromTwoObservers } from '../../../server/core/agree/detection/two-observers.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

const matched = fc
  .tuple(fc.nat(200), fc.nat(60), fc.nat(60))
  .filter(([both, one, other]) => both + one + other > 0)
  .map(([both, one, other]) => ({ first: both + one, second: both + other, both }));

describe('estimateFromTwoObservers', () => {
  it('is symmetric, holds its estimates, and is never below what was seen (property)', () => {
    fc.assert(
      fc.property(matched, ({ first, second, both }) => {
        const found = estimateFromTwoObservers({ first, second, both });
        const swapped = estimateFromTwoObservers({ first: second, second: first, both });
        expect(swapped.chapman).toEqual(found.chapman);
        expect(swapped.chanceFirst).toBe(found.chanceSecond);
        const { value, interval } = found.chapman;
        expect(value).toBeGreaterThanOrEqual(found.seen - 1e-9);
        expect(interval.low).toBeGreaterThanOrEqual(found.seen);
        expect(interval.low).toBeLessThanOrEqual(value + 1e-9);
        expect(interval.high).toBeGreaterThanOrEqual(value - 1e-9);
        expect(found.profileInterval.low).toBeGreaterThanOrEqual(found.seen);
        const { lincolnPetersen, profileInterval } = found;
        if (lincolnPetersen === null) expect(profileInterval.high).toBe(Infinity);
        else {
          expect(profileInterval.low).toBeLessThanOrEqual(lincolnPetersen.value + 1e-6);
          expect(profileInterval.high).toBeGreaterThanOrEqual(lincolnPetersen.value - 1e-6);
        }
        for (const each of [value, interval.low, interval.high, profileInterval.low]) {
          expect(Number.isFinite(each)).toBe(true);
        }
      }),
    );
  });

  it('gives flocks that both saw, all of them, and no more', () => {
    const found = estimateFromTwoObservers({ first: 8, second: 8, both: 8 });
    expect(found.chapman.value).toBe(8);
    expect(found.chapman.interval).toEqual({ low: 8, high: 8 });
    expect(found.missedByAll?.value).toBe(0);
    expect(found.profileInterval.high).toBeGreaterThan(8);
  });

  it('knows no upper limit where none was seen by both, and refuses impossible numbers', () => {
    const found = estimateFromTwoObservers({ first: 5, second: 4, both: 0 });
    expect(found.lincolnPetersen).toBeNull();
    expect(found.chapman.value).toBe(29);
    expect(found.profileInterval.high).toBe(Infinity);
    expect(estimateFromTwoObservers({ first: 0, second: 3, both: 0 }).missedByAll).toBeNull();
    expect(() => estimateFromTwoObservers({ first: 2, second: 3, both: 3 })).toThrow('both ≤');
    expect(() => estimateFromTwoObservers({ first: 0, second: 0, both: 0 })).toThrow('whole');
  });

  it('holds the true number in 92 to 98 of 100 made-up pairs of observers, by either interval', () => {
    const random = seededRandom(1951);
    const [trials, truth] = [600, 120];
    const held = { logNormal: 0, profile: 0 };
    for (let trial = 0; trial < trials; trial += 1) {
      let [first, second, both] = [0, 0, 0];
      for (let flock = 0; flock < truth; flock += 1) {
        const [one, other] = [random.uniform() < 0.6, random.uniform() < 0.45];
        first += one ? 1 : 0;
        second += other ? 1 : 0;
        both += one && other ? 1 : 0;
      }
      const { chapman, profileInterval } = estimateFromTwoObservers({ first, second, both });
      const holds = ({ low, high }: { low: number; high: number }): number =>
        low <= truth && truth <= high ? 1 : 0;
      held.logNormal += holds(chapman.interval);
      held.profile += holds(profileInterval);
    }
    for (const each of Object.values(held)) {
      expect(each / trials).toBeGreaterThan(0.92);
      expect(each / trials).toBeLessThan(0.985);
    }
  });
});

describe('fitHuggins', () => {
  const flock = (seenBy: (boolean | null)[], covariates: number[] = [], amount = 1) => ({
    seenBy,
    covariates,
    amount,
  });
  const many = (times: number, seenBy: (boolean | null)[]) =>
    Array.from({ length: times }, () => flock(seenBy));

  it('is Lincoln and Petersen with two observers, whatever the numbers (property)', () => {
    const numbers = fc.tuple(
      fc.integer({ min: 2, max: 40 }),
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 30 }),
    );
    fc.assert(
      fc.property(numbers, ([both, one, other]) => {
        const found = fitHuggins(
          [...many(both, [true, true]), ...many(one, [true, false]), ...many(other, [false, true])],
          { intercepts: 'each' },
        );
        if (!found.fitted) throw new Error(found.reason);
        expect(found.flocks.value / (((both + one) * (both + other)) / both)).toBeCloseTo(1, 7);
        expect(found.missedByAll.value).toBeCloseTo(1 - found.n / found.flocks.value, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('does not mind the units of a covariate, and leaves out who was not there', () => {
    const random = seededRandom(1991);
    const flocks = Array.from({ length: 160 }, () => {
      const size = Math.log(10 + random.integer(400));
      const chance = 1 / (1 + Math.exp(3 - 0.9 * size));
      const seenBy = [
        random.uniform() < chance,
        random.uniform() < chance,
        random.uniform() < 0.5 ? null : random.uniform() < chance,
      ];
      return flock(seenBy, [size], Math.exp(size));
    }).filter(({ seenBy }) => seenBy.includes(true));
    const found = fitHuggins(flocks, { intercepts: 'each' });
    const other = fitHuggins(
      flocks.map((each) => ({ ...each, covariates: each.covariates.map((x) => 1000 - 50 * x) })),
      { intercepts: 'each' },
    );
    if (!found.fitted || !other.fitted) throw new Error('not fitted');
    expect(other.flocks.value).toBeCloseTo(found.flocks.value, 6);
    expect(other.slopes[0]?.value).toBeCloseTo((found.slopes[0]?.value ?? NaN) / -50, 6);
    expect(found.slopes[0]?.value).toBeGreaterThan(0.4);
    expect(found.flocks.low).toBeLessThan(160);
    expect(found.flocks.high).toBeGreaterThan(160);
    expect(found.amount.value).toBeGreaterThan(found.flocks.value);
  });

  it('says why it has no answer', () => {
    const none = [...many(6, [true, false]), ...many(5, [false, true])];
    expect(fitHuggins(none, { intercepts: 'each' })).toMatchObject({
      reason: 'at-the-edge',
      n: 11,
    });
    const everything = [...many(6, [true, true]), ...many(5, [true, false])];
    expect(fitHuggins(everything, { intercepts: 'each' })).toMatchObject({ reason: 'at-the-edge' });
    expect(fitHuggins(many(2, [true, true]), { intercepts: 'each' })).toMatchObject({
      reason: 'too-few',
    });
    expect(fitHuggins([], { intercepts: 'each' })).toMatchObject({ reason: 'too-few' });
    const twice = [
      ...many(9, [true, true]),
      ...many(5, [true, false]),
      ...many(5, [false, true]),
    ].map((each, place) => ({ ...each, covariates: [place % 3, 2 * (place % 3) + 1] }));
    expect(fitHuggins(twice, { intercepts: 'each' })).toMatchObject({ reason: 'not-told-apart' });
    const same = twice.map((each) => ({ ...each, covariates: [7] }));
    expect(fitHuggins(same, { intercepts: 'each' })).toMatchObject({ reason: 'not-told-apart' });
    expect(() => fitHuggins(many(3, [false, false]), { intercepts: 'one' })).toThrow('someone saw');
  });
});

describe('chaoLowerBound', () => {
  it('has an answer without any seen twice, and none to add where none was seen once', () => {
    const found = chaoLowerBound([6]);
    expect(found).toMatchObject({ seen: 6, value: 21, form: 'bias-corrected' });
    expect(found.variance).toBeGreaterThan(0);
    expect(chaoLowerBound([0, 0, 4])).toMatchObject({
      value: 4,
      variance: 0,
      interval: { low: 4, high: 4 },
    });
    expect(chaoLowerBound([])).toMatchObject({ value: 0, variance: 0 });
    expect(() => chaoLowerBound([1.5])).toThrow('whole');
  });
});

describe('fitBinomialMixture', () => {
  /** Sites with Poisson numbers, by adding up exponential waiting times, and binomial counts. */
  function madeUp(
    sites: number,
    visits: number,
    mean: number,
    chance: number,
    seed: number,
  ): number[][] {
    const random = seededRandom(seed);
    return Array.from({ length: sites }, () => {
      let [number, waited] = [0, -Math.log(1 - random.uniform())];
      while (waited < mean) {
        number += 1;
        waited -= Math.log(1 - random.uniform());
      }
      return Array.from({ length: visits }, () => {
        let count = 0;
        for (let one = 0; one < number; one += 1) count += random.uniform() < chance ? 1 : 0;
        return count;
      });
    });
  }

  it('finds the mean and the chance that counts were made with', () => {
    const found = fitBinomialMixture(madeUp(300, 4, 6, 0.5, 2004));
    expect(found.standing).toBe('sound');
    expect(found.mean?.low).toBeLessThan(6);
    expect(found.mean?.high).toBeGreaterThan(6);
    expect(found.chance?.low).toBeLessThan(0.5);
    expect(found.chance?.high).toBeGreaterThan(0.5);
    expect(found.total?.value).toBeCloseTo(300 * (found.mean?.value ?? NaN), 8);
  });

  it.each(['poisson', 'negative-binomial'] as const)(
    'warns where nothing tells the chance: %s',
    (abundance) => {
      // Counts of a site that go up and down no more than chance: Poisson counts of one mean.
      const random = seededRandom(7);
      const counts = madeUp(60, 2, 3, 1, 11).map(([one = 0]) => [
        one,
        madeUp(1, 1, 3, 1, random.integer(100000))[0]?.[0] ?? 0,
      ]);
      const crossed = counts.map(([one = 0, other = 0], place) => [
        one,
        counts[counts.length - 1 - place]?.[0] ?? other,
      ]);
      const found = fitBinomialMixture(crossed, abundance);
      expect(['not-identifiable', 'weak']).toContain(found.standing);
      expect(found.warning).toContain('near 0');
      if (found.mean !== null) expect(found.mean.high).toBe(Infinity);
    },
  );

  it('gives no numbers for counts against each other, for zeros, or for too few sites', () => {
    const against = Array.from({ length: 20 }, (_, site) => (site % 2 === 0 ? [1, 5] : [5, 1]));
    expect(fitBinomialMixture(against)).toMatchObject({ standing: 'not-identifiable', mean: null });
    const zeros = Array.from({ length: 20 }, () => [0, 0]);
    expect(fitBinomialMixture(zeros)).toMatchObject({ standing: 'not-identifiable', total: null });
    expect(
      fitBinomialMixture([
        [1, 2],
        [3, null],
        [null, null],
      ]),
    ).toMatchObject({ standing: 'too-few', sites: 2, counts: 3 });
    expect(() => fitBinomialMixture([[1.5, 2]])).toThrow('whole counts');
  });

  it('does not mind the order of sites and visits', () => {
    const counts = madeUp(80, 3, 4, 0.6, 3);
    const turned = counts.map((row) => [...row].reverse()).reverse();
    expect(fitBinomialMixture(turned)).toEqual(fitBinomialMixture(counts));
  });
});
