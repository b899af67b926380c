import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { probabilitiesOf, type Candidate } from '../../../server/core/link/association.js';
import { seededRandom, type SeededRandom } from '../../../server/core/math/seeded-random.js';
import { chooseLinks } from '../../../server/core/link/choose-links.js';

const never = () => false;

/** Whole flocks of 100 birds each. */
function whole(first: number, second: number, logOdds: number): Candidate {
  return { first, second, logOdds, birds: 100, isPart: false, cells: null };
}

const rooms = (sightings: number): number[] => Array.from({ length: sightings }, () => 110);

/** Two of these cells each hold two of six sightings. */
const cellOf = (sighting: number): string => ['east', 'middle', 'west'][sighting % 3] ?? '';

/** Every set of candidates in which each sighting has one partner at most of each sort. */
function allowedSets(candidates: readonly Candidate[]): number[][] {
  return Array.from({ length: 2 ** candidates.length }, (_, bits) =>
    candidates.flatMap((_candidate, index) => (bits & (1 << index) ? [index] : [])),
  ).filter((set) => {
    const ends = set.flatMap((index) => {
      const { first, second, cells } = candidates[index] ?? whole(0, 0, 0);
      return cells === null
        ? [`${first} goes on`, `${second} came`]
        : [`${first} is in ${cells[1]}`, `${second} is in ${cells[0]}`];
    });
    return new Set(ends).size === ends.length;
  });
}

function byTrying(candidates: readonly Candidate[]): number[] {
  const odds = (set: readonly number[]) =>
    set.reduce((product, index) => product * Math.exp(candidates[index]?.logOdds ?? 0), 1);
  const sets = allowedSets(candidates);
  const all = sets.reduce((sum, set) => sum + odds(set), 0);
  return candidates.map(
    (_, index) =>
      sets.filter((set) => set.includes(index)).reduce((sum, set) => sum + odds(set), 0) / all,
  );
}

/** How often each candidate is in associations drawn one link at a time (Gibbs sampling). */
function bySampling(
  candidates: readonly Candidate[],
  sweeps: number,
  random: SeededRandom,
): number[] {
  const taken = new Set<string>();
  const inside = candidates.map(() => false);
  const times = candidates.map(() => 0);
  for (let sweep = 0; sweep < sweeps; sweep += 1) {
    candidates.forEach(({ first, second, logOdds }, index) => {
      const ends = [`${first} goes on`, `${second} came`];
      if (inside[index] === true) ends.forEach((end) => taken.delete(end));
      const isFree = ends.every((end) => !taken.has(end));
      inside[index] = isFree && random.uniform() < 1 / (1 + Math.exp(-logOdds));
      if (inside[index]) ends.forEach((end) => taken.add(end));
      times[index] = (times[index] ?? 0) + (inside[index] ? 1 : 0);
    });
  }
  return times.map((each) => each / sweeps);
}

/** Pairs of six sightings, the first always the lower: a chain never comes round. */
const candidates = fc.uniqueArray(
  fc
    .record({
      ends: fc.uniqueArray(fc.nat(5), { minLength: 2, maxLength: 2 }),
      logOdds: fc.double({ min: -4, max: 4, noNaN: true }),
    })
    .map(({ ends, logOdds }) => whole(Math.min(...ends), Math.max(...ends), logOdds)),
  { maxLength: 8, selector: ({ first, second }) => `${first} ${second}` },
);

/** The same pairs, those of different cells some of them as flocks that stayed in view of both. */
const withOverlaps = fc
  .tuple(candidates, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }))
  .map(([given, stayed]) =>
    given.map((candidate, index): Candidate => {
      const cells = [cellOf(candidate.first), cellOf(candidate.second)] as const;
      return stayed[index] === true && cells[0] !== cells[1] ? { ...candidate, cells } : candidate;
    }),
  );

describe('probabilitiesOf', () => {
  it('is exact where candidates form no loop: one sighting and its rivals', () => {
    const rivals: Candidate[] = [whole(0, 1, 2), whole(0, 2, 1), whole(3, 2, 0.5), whole(4, 2, -1)];
    const exact = byTrying(rivals);
    probabilitiesOf(rivals).forEach((probability, index) => {
      expect(probability).toBeCloseTo(exact[index] ?? NaN, 6);
    });
  });

  it('lets a sighting be one flock of each other cell, whichever was seen first', () => {
    const overlap = (first: number, second: number, logOdds: number): Candidate => ({
      ...whole(first, second, logOdds),
      cells: [cellOf(first), cellOf(second)],
    });
    // 1 and 4 are of one cell: only one of them can be the flock 0, though the one is seen before it.
    const rivals = [overlap(0, 1, 1), overlap(4, 0, 0.5)];
    const exact = byTrying(rivals);
    expect(exact[0]).toBeCloseTo(Math.E / (1 + Math.E + Math.exp(0.5)), 12);
    probabilitiesOf(rivals).forEach((probability, index) => {
      expect(probability).toBeCloseTo(exact[index] ?? NaN, 6);
    });
    // 1 and 5 are of different cells: the flock may be seen from all three.
    const [alone] = probabilitiesOf([overlap(0, 1, 1)]);
    expect(probabilitiesOf([overlap(0, 1, 1), overlap(0, 5, 2)])[0]).toBeCloseTo(alone ?? NaN, 6);
  });

  it('is near what trying every set gives where flocks moved or stayed', () => {
    fc.assert(
      fc.property(withOverlaps, (given) => {
        const exact = byTrying(given);
        probabilitiesOf(given).forEach((probability, index) => {
          expect(Math.abs(probability - (exact[index] ?? NaN))).toBeLessThan(0.1);
        });
      }),
      { numRuns: 200 },
    );
  });

  it('is near what sampled associations give, however many sightings compete', () => {
    const random = seededRandom(20270116);
    const sightings = 24;
    const dense = Array.from({ length: sightings / 2 }, (_, first) =>
      Array.from({ length: sightings / 2 }, (_unused, second) =>
        whole(first, sightings / 2 + second, -3 + 4 * random.uniform()),
      ),
    ).flat();
    const found = probabilitiesOf(dense);
    const sampled = bySampling(dense, 40_000, random);
    const apart = found.map((probability, index) => probability - (sampled[index] ?? NaN));
    const worst = Math.max(...apart.map(Math.abs));
    const mean = apart.reduce((sum, each) => sum + each, 0) / apart.length;
    expect(worst).toBeLessThan(0.06);
    expect(Math.abs(mean)).toBeLessThan(0.005);
  });

  it('lets a total be followed by any number of flocks, each as if alone', () => {
    const rivals = [whole(0, 1, 1), whole(0, 2, 0.5)];
    const free = probabilitiesOf(rivals, [], [true, false, false]);
    expect(free[0]).toBeCloseTo(Math.E / (1 + Math.E), 6);
    expect(free[1]).toBeCloseTo(1 / (1 + Math.exp(-0.5)), 6);
  });

  it('is near what trying every set gives, and competing links add up to at most 1', () => {
    fc.assert(
      fc.property(candidates, (given) => {
        const found = probabilitiesOf(given);
        const exact = byTrying(given);
        found.forEach((probability, index) => {
          expect(Math.abs(probability - (exact[index] ?? NaN))).toBeLessThan(0.1);
        });
        for (let sighting = 0; sighting < 6; sighting += 1) {
          const sumOf = (side: 'first' | 'second') =>
            given.reduce(
              (sum, candidate, index) =>
                sum + (candidate[side] === sighting ? (found[index] ?? 0) : 0),
              0,
            );
          expect(sumOf('first')).toBeLessThanOrEqual(1 + 1e-6);
          expect(sumOf('second')).toBeLessThanOrEqual(1 + 1e-6);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('a flock that splits', () => {
  const part = (second: number, birds: number, logOdds: number): Candidate => ({
    first: 0,
    second,
    logOdds,
    birds,
    isPart: true,
    cells: null,
  });

  it('may be followed by two parts that it has birds enough for, as if neither were there', () => {
    const [alone] = probabilitiesOf([part(1, 60, 1)], [110, 60, 40]);
    const both = probabilitiesOf([part(1, 60, 1), part(2, 40, 0)], [110, 60, 40]);
    const rivals = probabilitiesOf([part(1, 60, 1), part(2, 80, 0)], [110, 60, 80]);
    expect(both[0]).toBeCloseTo(alone ?? NaN, 6);
    expect(rivals[0]).toBeLessThan(alone ?? NaN);
    // Either, or none: the odds over their sum.
    expect(rivals[0]).toBeCloseTo(Math.E / (1 + Math.E + 1), 6);
  });

  it('gives both parts of it where birds are conserved, else the better one', () => {
    const choose = (given: readonly Candidate[], room: readonly number[]) =>
      chooseLinks({ candidates: given, room, apart: never }, 0);
    expect(choose([part(1, 60, 1), part(2, 40, 0.5)], [110, 60, 40])).toEqual([0, 1]);
    expect(choose([part(1, 60, 1), part(2, 80, 2)], [110, 60, 80])).toEqual([1]);
  });
});

describe('chooseLinks', () => {
  it('takes the set with the greatest sum of log odds, which trying every set finds', () => {
    fc.assert(
      fc.property(candidates, (given) => {
        const sum = (set: readonly number[]) =>
          set.reduce((total, index) => total + (given[index]?.logOdds ?? 0), 0);
        const chosen = chooseLinks({ candidates: given, room: rooms(6), apart: never }, 0);
        const best = Math.max(...allowedSets(given).map(sum));
        // Log odds are compared in thousandths.
        expect(sum(chosen)).toBeGreaterThan(best - 0.01);
      }),
      { numRuns: 200 },
    );
  });

  it('then shows doubtful links between sightings that are left', () => {
    const given: Candidate[] = [
      whole(0, 1, 1),
      whole(0, 2, -0.5),
      whole(3, 1, -0.5),
      whole(3, 2, -1),
      whole(4, 5, -5),
    ];
    expect(chooseLinks({ candidates: given, room: rooms(6), apart: never }, -3)).toEqual([0, 3]);
  });

  it('closes no ring: someone has to keep the birds', () => {
    const ring: Candidate[] = [whole(0, 1, 3), whole(1, 2, 2), whole(2, 0, 1)];
    expect(chooseLinks({ candidates: ring, room: rooms(3), apart: never }, -3)).toEqual([0, 1]);
  });

  it('chains no two sightings that one observer told apart', () => {
    const given: Candidate[] = [whole(0, 1, 3), whole(1, 2, 2)];
    const apart = (one: number, other: number) =>
      Math.min(one, other) === 0 && Math.max(one, other) === 2;
    expect(chooseLinks({ candidates: given, room: rooms(3), apart: apart }, -3)).toEqual([0]);
  });

  it('comes to an end whatever is told apart, with birds conserved and no ring', () => {
    const anyCandidates = fc.uniqueArray(
      fc
        .record({
          ends: fc.uniqueArray(fc.nat(7), { minLength: 2, maxLength: 2 }),
          logOdds: fc.double({ min: -3, max: 4, noNaN: true }),
          birds: fc.integer({ min: 1, max: 100 }),
          isPart: fc.boolean(),
        })
        .map(({ ends: [first = 0, second = 1], ...rest }): Candidate => ({
          first,
          second,
          cells: null,
          ...rest,
        })),
      {
        minLength: 4,
        maxLength: 16,
        selector: ({ first, second }) => `${Math.min(first, second)} ${Math.max(first, second)}`,
      },
    );
    const pairs = fc.uniqueArray(fc.tuple(fc.nat(7), fc.nat(7)), {
      maxLength: 8,
      selector: ([one, other]) => `${one} ${other}`,
    });
    fc.assert(
      fc.property(anyCandidates, pairs, (given, told) => {
        const apart = (one: number, other: number) =>
          told.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
        const room = rooms(8);
        const chosen = chooseLinks({ candidates: given, room, apart }, -3).flatMap(
          (index) => given[index] ?? [],
        );
        for (const side of ['first', 'second'] as const) {
          for (let sighting = 0; sighting < 8; sighting += 1) {
            const own = chosen.filter((each) => each[side] === sighting);
            // A link is taken if seven tenths of its birds are: so much may be lacking.
            const birds = own.reduce((sum, each) => sum + 0.7 * each.birds, 0);
            expect(birds).toBeLessThanOrEqual(room[sighting] ?? 0);
          }
        }
        const joined = new Map<number, number>();
        const root = (one: number): number => {
          const next = joined.get(one);
          return next === undefined ? one : root(next);
        };
        for (const { first, second } of chosen) {
          expect(root(first)).not.toBe(root(second));
          joined.set(root(first), root(second));
        }
      }),
      { numRuns: 2000 },
    );
  });
});
