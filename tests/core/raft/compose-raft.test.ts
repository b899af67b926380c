import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeRaft, type RaftComposition } from '../../../server/core/raft/compose-raft.js';
import type { ScannedBirds, SmallCount } from '../../../server/core/raft/small-count.js';
import { keyOf } from '../../../server/core/taxa/candidate-set.js';
import { NESTED_LEVELS } from '../../published/em-partially-classified.js';
import { expectRelative } from '../../support/expect-relative.js';
import { smallCountsOf, type PatchyRaft } from './patchy-raft.js';

const birds = (name: string, number: number): ScannedBirds => ({
  candidates: name.split('/'),
  number,
});

function composed(samples: readonly SmallCount[]): RaftComposition {
  const composition = composeRaft(samples);
  if (composition === null) throw new Error('the raft has scanned birds');
  return composition;
}

const shareOf = (composition: RaftComposition, name: string) => {
  const found = composition.identifications.find(({ candidates }) => candidates.join('/') === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('shares of single birds, drawn one by one', () => {
  // Small counts of one bird have no patches: what is left is Jeffreys' interval of a proportion.
  // Expected: scipy 1.17.1, stats.beta.ppf([.025, .975], x + .5, n - x + .5).
  it.each([
    [5, 10, 0.22352867, 0.77647133],
    [3, 20, 0.04413134, 0.34857771],
    [81, 263, 0.25452193, 0.3656475],
  ])('have Jeffreys’ interval: %d of %d', (x, n, low, high) => {
    const samples = Array.from({ length: n }, (_, at) => [birds(at < x ? 'a' : 'b', 1)]);
    const { share, ...interval } = shareOf(composed(samples), 'a');
    expect(share).toBe(x / n);
    expect(interval.low).toBeCloseTo(low, 5);
    expect(interval.high).toBeCloseTo(high, 5);
  });
});

describe('shares from small counts with patches', () => {
  // Reference: the whole posterior of share and alikeness by brute force, with numpy and scipy 1.17.1 on
  // a grid of 2000 × 400: exact beta-binomial likelihood, Beta(½, ½) for the share, 9 (1 − ρ)⁸ for the
  // alikeness. Ours is quicker and approximate: limits within 0.07 of the raft, mostly 0.02.
  it.each([
    [[12, 15, 9], [30, 30, 30], 0.2457, 0.5845, 0.0622],
    [[25, 5, 24, 6], [25, 25, 25, 25], 0.3899, 0.8946, 0.3276],
    [[20], [40], 0.1828, 0.8166, 0.0914],
    [[8, 9, 7, 8, 10, 9], [40, 40, 40, 40, 40, 40], 0.1557, 0.2953, 0.0193],
    [[30, 12, 22, 5, 18], [35, 20, 40, 10, 30], 0.4733, 0.7625, 0.078],
    [[2, 0, 3, 1], [50, 50, 50, 50], 0.0121, 0.1371, 0.0603],
    [[38, 40, 36], [40, 40, 40], 0.7948, 0.9852, 0.0894],
  ])('%j of %j are near the posterior by brute force', (seen, sizes, low, high, alikeness) => {
    const samples = seen.map((x, at) => [birds('a', x), birds('b', (sizes[at] ?? 0) - x)]);
    const composition = composed(samples);
    const ours = shareOf(composition, 'a');
    expect(Math.abs(ours.low - low)).toBeLessThan(0.07);
    expect(Math.abs(ours.high - high)).toBeLessThan(0.07);
    expect(Math.abs(composition.alikeness - alikeness)).toBeLessThan(0.025);
  });

  it('are wider where small counts differ more than chance lets them', () => {
    const of = (numbers: readonly number[]) =>
      shareOf(composed(numbers.map((x) => [birds('a', x), birds('b', 40 - x)])), 'a');
    const [alike, apart] = [of([19, 21, 20, 20]), of([35, 5, 30, 10])];
    expect(apart.share).toBe(alike.share);
    expect(apart.high - apart.low).toBeGreaterThan(1.5 * (alike.high - alike.low));
  });

  it('run to the whole raft where one kind was seen alone', () => {
    const only = shareOf(composed([[birds('a', 30)], [birds('a', 25)]]), 'a');
    expect(only).toMatchObject({ share: 1, high: 1 });
    expect(only.low).toBeGreaterThan(0.75);
    expect(only.low).toBeLessThan(1);
  });

  it('are not there without birds', () => {
    expect(composeRaft([])).toBeNull();
    expect(composeRaft([[], [birds('a', 0)]])).toBeNull();
  });
});

/** Fixed seeds, so that a verdict does not hang on luck: half the intervals' chances are in the bounds. */
describe('intervals hold the truth about as often as they say', () => {
  const rafts: readonly (readonly [string, PatchyRaft['kinds']])[] = [
    [
      'two kinds',
      [
        [['a'], 0.6],
        [['b'], 0.4],
      ],
    ],
    [
      'three kinds and a pair',
      [
        [['a'], 0.4],
        [['b'], 0.3],
        [['c'], 0.15],
        [['a', 'b'], 0.15],
      ],
    ],
  ];
  const cases = rafts.flatMap(([name, kinds]) =>
    [0, 0.03, 0.1].flatMap((alikeness) =>
      [3, 6].map((samples) => ({ name, kinds, alikeness, samples })),
    ),
  );
  it.each(cases)('$name, alikeness $alikeness, $samples samples', (setting) => {
    const runs = 150;
    let [inside, all] = [0, 0];
    for (let run = 0; run < runs; run += 1) {
      const composition = composed(smallCountsOf(setting, setting.samples, 40, 1000 + run));
      for (const [candidates, share] of setting.kinds) {
        const found = composition.identifications.find(
          (each) => keyOf(each.candidates) === keyOf(candidates),
        );
        all += 1;
        if (found !== undefined && found.low <= share && share <= found.high) inside += 1;
      }
    }
    // 95 % are meant; over-cautious where the raft is stirred better than rafts are expected to be.
    expect(inside / all).toBeGreaterThan(0.9);
    if (setting.alikeness > 0.05) expect(inside / all).toBeLessThan(0.985);
  });

  it('and so do those of species that pairs were shared out to', () => {
    const kinds: PatchyRaft['kinds'] = [
      [['a'], 0.42],
      [['b'], 0.28],
      [['a', 'b'], 0.3],
    ];
    let [inside, width, plainWidth] = [0, 0, 0];
    for (let run = 0; run < 200; run += 1) {
      const composition = composed(smallCountsOf({ kinds, alikeness: 0.05 }, 5, 40, run));
      const estimate = composition.estimates.find(({ species }) => species === 'a');
      if (estimate === undefined) continue;
      if (estimate.low <= 0.6 && 0.6 <= estimate.high) inside += 1;
      width += estimate.high - estimate.low;
      const plain = kinds.slice(0, 2).map(([set, share]) => [set, share / 0.7] as const);
      const named = composed(smallCountsOf({ kinds: plain, alikeness: 0.05 }, 5, 40, run));
      plainWidth += shareOf(named, 'a').high - shareOf(named, 'a').low;
    }
    expect(inside / 200).toBeGreaterThan(0.9);
    expect(width).toBeGreaterThan(plainWidth);
  });

  it('and more samples never widen them in expectation', () => {
    for (const alikeness of [0, 0.05, 0.2]) {
      const kinds: PatchyRaft['kinds'] = [
        [['a'], 0.7],
        [['b'], 0.3],
      ];
      const widths = [1, 2, 3, 4, 6, 9].map((samples) => {
        let width = 0;
        for (let run = 0; run < 150; run += 1) {
          const { identifications } = composed(
            smallCountsOf({ kinds, alikeness }, samples, 30, run),
          );
          const [first] = identifications;
          width += (first?.high ?? NaN) - (first?.low ?? NaN);
        }
        return width / 150;
      });
      expect(widths).toEqual([...widths].sort((one, other) => other - one));
    }
  });
});

describe('estimated species', () => {
  it('are shared out as nested groups are, in closed form', () => {
    const { species, groups, expected } = NESTED_LEVELS;
    const sample = [
      ...Object.entries(species).map(([name, number]) => birds(name, number)),
      ...groups.map(({ members, count }) => birds(members.join('/'), count)),
    ];
    const { estimates } = composed([sample]);
    expected.proportions.forEach((share, at) => {
      expectRelative(estimates[at]?.share ?? NaN, share, 1e-9);
    });
  });

  it('know no more of two species than their named birds say, however many are left at the pair', () => {
    // Closed form: the pair's birds are of the one or the other whatever the share is.
    const samples = [birds('a', 12), birds('b', 28), birds('a/b', 60)].flatMap(
      ({ candidates, number }) => Array.from({ length: number }, () => [{ candidates, number: 1 }]),
    );
    const named = samples.filter(([each]) => each?.candidates.length === 1);
    const estimate = composed(samples).estimates.find(({ species }) => species === 'a');
    const alone = shareOf(composed(named), 'a');
    expect(estimate?.share).toBeCloseTo(alone.share, 10);
    expect(estimate?.low).toBeCloseTo(alone.low, 5);
    expect(estimate?.high).toBeCloseTo(alone.high, 5);
  });

  it('are left out where nothing says how a pair divides', () => {
    expect(composed([[birds('a', 20), birds('a/b', 10), birds('c', 5)]]).estimates).toEqual([]);
  });
});

const anySamples = fc.array(
  fc.array(
    fc.record({
      candidates: fc.constantFrom(['a'], ['b'], ['c'], ['a', 'b'], ['a', 'b', 'c']),
      number: fc.integer({ min: 0, max: 40 }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  { minLength: 1, maxLength: 6 },
);

describe('a composition', () => {
  it('does not depend on the order of samples, nor of birds in them', () => {
    fc.assert(
      fc.property(anySamples, (samples) => {
        const turned = [...samples].reverse().map((sample) => [...sample].reverse());
        const { evidence: one, ...rest } = composeRaft(samples) ?? { evidence: null };
        const { evidence: other, ...restTurned } = composeRaft(turned) ?? { evidence: null };
        expect(restTurned).toEqual(rest);
        expect(other?.mixings).toEqual(one?.mixings);
      }),
    );
  });

  it('does not depend on how species are called', () => {
    const renamed = (name: string): string => ({ a: 'z', b: 'y', c: 'x' })[name] ?? name;
    const rename = (set: readonly string[]): string[] => set.map(renamed).sort();
    fc.assert(
      fc.property(anySamples, (samples) => {
        const plain = composeRaft(samples);
        const other = composeRaft(
          samples.map((sample) =>
            sample.map(({ candidates, number }) => ({ candidates: rename(candidates), number })),
          ),
        );
        for (const each of plain?.identifications ?? []) {
          const same = other?.identifications.find(
            ({ candidates }) => keyOf(candidates) === keyOf(rename(each.candidates)),
          );
          expect(same).toEqual({ ...each, candidates: rename(each.candidates) });
        }
        for (const each of plain?.estimates ?? []) {
          const same = other?.estimates.find(({ species }) => species === renamed(each.species));
          expect(same?.share).toBeCloseTo(each.share, 9);
          expect(same?.low).toBeCloseTo(each.low, 5);
          expect(same?.high).toBeCloseTo(each.high, 5);
        }
      }),
    );
  });

  it('has shares that add up to one, each within its interval', () => {
    fc.assert(
      fc.property(anySamples, (samples) => {
        const composition = composeRaft(samples);
        if (composition === null) return;
        const all = composition.identifications.reduce((total, { share }) => total + share, 0);
        expect(all).toBeCloseTo(1, 12);
        for (const each of [...composition.identifications, ...composition.estimates]) {
          expect(each.low).toBeGreaterThanOrEqual(0);
          expect(each.low).toBeLessThanOrEqual(each.share);
          expect(each.high).toBeGreaterThanOrEqual(each.share);
          expect(each.high).toBeLessThanOrEqual(1);
        }
      }),
    );
  });
});
