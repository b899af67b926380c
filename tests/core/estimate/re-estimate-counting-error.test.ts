import { describe, expect, it } from 'vitest';
import { pairedCounts, type PairedCount } from '../../../server/core/estimate/paired-counts.js';
import {
  reEstimateCountingError,
  type ErrorTableRow,
} from '../../../server/core/estimate/re-estimate-counting-error.js';
import { normalQuantile } from '../../../server/core/math/normal.js';
import { seededRandom, type SeededRandom } from '../../../server/core/math/seeded-random.js';
import type { Method } from '../../../server/core/model/snapshot.js';
import { aCount, aProtocol, aTally } from '../a-count.js';

const protocol = aProtocol({
  countingError: {
    'one-by-one': [
      { upTo: 500, cv: 0.05 },
      { upTo: null, cv: 0.1 },
    ],
    block: [{ upTo: null, cv: 0.2 }],
    sample: [{ upTo: null, cv: 0.2 }],
    guess: [{ upTo: null, cv: 0.5 }],
  },
});

/** Standard deviations of ln counts that the made-up observers have. */
const TRUE_ERROR = { observer: 0.08, small: 0.06, large: 0.15, block: 0.3 };

const normal = (random: SeededRandom): number => normalQuantile(random.uniform() || 0.5);

/** Flocks counted by two or three of seven observers, one by one or in blocks as it comes. */
function madeUp(groups: number, seed: number): PairedCount[] {
  const random = seededRandom(seed);
  const bias = Array.from({ length: 7 }, () => TRUE_ERROR.observer * normal(random));
  return Array.from({ length: groups }, (_, group) => {
    const birds = 60 * Math.exp(4.5 * random.uniform());
    const first = random.integer(7);
    const observers = [first, (first + 1 + random.integer(3)) % 7, (first + 4) % 7];
    return observers.slice(0, 2 + random.integer(2)).map((observer): PairedCount => {
      const method: Method = random.uniform() < 0.5 ? 'block' : 'one-by-one';
      const own =
        method === 'block' ? TRUE_ERROR.block : birds > 500 ? TRUE_ERROR.large : TRUE_ERROR.small;
      const number = Math.round(birds * Math.exp((bias[observer] ?? 0) + own * normal(random)));
      return { group: `g${group}`, observer: `o${observer}`, lines: [{ method, number }] };
    });
  }).flat();
}

const row = (
  rows: readonly ErrorTableRow[],
  method: Method,
  upTo: number | null,
): ErrorTableRow => {
  const found = rows.find((each) => each.method === method && each.upTo === upTo);
  if (found === undefined) throw new Error(`no row ${method} ${upTo ?? ''}`);
  return found;
};

const cvOf = (own: number): number => Math.sqrt(Math.exp(own ** 2 + TRUE_ERROR.observer ** 2) - 1);

const TRUE_ROWS = [
  ['one-by-one', 500, cvOf(TRUE_ERROR.small)],
  ['one-by-one', null, cvOf(TRUE_ERROR.large)],
  ['block', null, cvOf(TRUE_ERROR.block)],
] as const;

describe('reEstimateCountingError', () => {
  it('recovers the errors of made-up observers, and its intervals hold them', () => {
    const runs = 16;
    const found = Array.from({ length: runs }, (_, seed) =>
      reEstimateCountingError(madeUp(44, seed + 1), protocol),
    );
    for (const [method, upTo, truth] of TRUE_ROWS) {
      const rows = found.map(({ rows: all }) => row(all, method, upTo));
      const mean = rows.reduce((sum, { cv }) => sum + (cv ?? NaN), 0) / runs;
      expect(
        Math.abs(mean / truth - 1),
        `${method} ${upTo ?? 'above'}: ${mean} for ${truth}`,
      ).toBeLessThan(0.15);
      const held = rows.filter(({ low, high }) => (low ?? NaN) <= truth && truth <= (high ?? NaN));
      expect(held.length, `${method} ${upTo ?? 'above'}`).toBeGreaterThanOrEqual(0.81 * runs);
    }
    expect(row(found[0]?.rows ?? [], 'guess', null)).toMatchObject({
      cv: null,
      missing: 'too-few',
      groups: 0,
    });
  });

  it('says too few below the least number of groups, and tells nothing from counts against those', () => {
    // Five groups block against block; four with a guess, two of them against one by one.
    const pair = (group: string, one: [Method, number], other: [Method, number]): PairedCount[] => [
      { group, observer: 'o1', lines: [{ method: one[0], number: one[1] }] },
      { group, observer: 'o2', lines: [{ method: other[0], number: other[1] }] },
    ];
    const counts = [
      ...[100, 120, 90, 105, 130].flatMap((number, k) =>
        pair(`b${k}`, ['block', 110], ['block', number]),
      ),
      ...[50, 300].flatMap((number, k) => pair(`g${k}`, ['guess', number], ['block', 100])),
      ...[50, 300].flatMap((number, k) => pair(`h${k}`, ['guess', number], ['one-by-one', 100])),
    ];
    const { rows, groups } = reEstimateCountingError(counts, protocol);
    expect(groups).toBe(5);
    expect(row(rows, 'guess', null)).toMatchObject({ groups: 4, cv: null, missing: 'too-few' });
    expect(row(rows, 'one-by-one', 500)).toMatchObject({ groups: 2, missing: 'too-few' });
    // By hand: half the mean of squared ln ratios of the five.
    const variance =
      [100, 120, 90, 105, 130].reduce((sum, number) => sum + Math.log(number / 110) ** 2, 0) / 10;
    expect(row(rows, 'block', null).cv).toBeCloseTo(Math.sqrt(Math.exp(variance) - 1), 8);
  });

  it('says not told apart of two methods that only ever met each other', () => {
    const counts = Array.from({ length: 8 }, (_, k): PairedCount[] => [
      { group: `g${k}`, observer: 'o1', lines: [{ method: 'block', number: 100 }] },
      { group: `g${k}`, observer: 'o2', lines: [{ method: 'guess', number: 80 + 7 * k }] },
    ]).flat();
    const { rows } = reEstimateCountingError(counts, protocol);
    expect(row(rows, 'block', null)).toMatchObject({ cv: null, missing: 'not-told-apart' });
    expect(row(rows, 'guess', null)).toMatchObject({ cv: null, missing: 'not-told-apart' });
  });

  it('says nothing of anything without paired counts', () => {
    const { rows, groups, betweenObservers } = reEstimateCountingError([], protocol);
    expect(groups).toBe(0);
    expect(betweenObservers).toBeNull();
    expect(rows.every(({ missing }) => missing === 'too-few')).toBe(true);
  });
});

describe('pairedCounts', () => {
  it('takes groups that two counted in full, line by line, and leaves out who shares a member', () => {
    const snapshot = aCount([
      aTally('o1', [
        ['Redhead', 40],
        ['Redhead', 200, { method: 'block' }],
        ['Mallard', 12],
        ['Bufflehead', 3, { activity: 'flying-through' }],
      ]),
      aTally('o2', [
        ['Redhead', 260, { method: 'block' }],
        ['Mallard', 0],
        ['Bufflehead', 3, { activity: 'flying-through' }],
      ]),
      aTally('o3', [['Redhead', 250]], { sections: ['s2'] }),
      aTally('o4', [['Redhead', 255]], { sections: ['s2'], party: ['o3', 'o4'] }),
    ]);
    const counts = pairedCounts([{ snapshot, protocol }]);
    expect(counts.map(({ observer, lines }) => [observer, lines])).toEqual([
      [
        'o1',
        [
          { method: 'one-by-one', number: 40 },
          { method: 'block', number: 200 },
        ],
      ],
      ['o2', [{ method: 'block', number: 260 }]],
    ]);
    expect(new Set(counts.map(({ group }) => group)).size).toBe(1);
  });
});
