import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  expectationMaximisation,
  expectedCounts,
  logLikelihoodOf,
  type PartialCount,
} from '../../../server/core/estimate/expectation-maximisation.js';
import { derivativesOf } from '../../../server/core/math/derivatives.js';
import {
  LINKAGE,
  NESTED_LEVELS,
  PARTLY_CLASSIFIED_TABLE,
} from '../../published/em-partially-classified.js';
import { expectRelative } from '../../support/expect-relative.js';

describe('the linkage data of Rao', () => {
  // The first class is two: one of half the units whatever theta, one of theta / 4.
  const [first, second, third, fourth] = LINKAGE.counts;
  const counts: PartialCount[] = [
    { categories: [0, 1], number: first },
    { categories: [2], number: second },
    { categories: [3], number: third },
    { categories: [4], number: fourth },
  ];
  const probabilitiesOf = (theta: number): number[] => [
    1 / 2,
    theta / 4,
    (1 - theta) / 4,
    (1 - theta) / 4,
    theta / 4,
  ];
  const thetaOf = (expected: readonly number[]): number => {
    const [, b = 0, c = 0, d = 0, e = 0] = expected;
    return (b + e) / (b + c + d + e);
  };

  it('moves from iterate to iterate as published', () => {
    let theta: number = LINKAGE.start;
    for (const iterate of LINKAGE.expected.iterates) {
      expectRelative(theta, iterate, 1e-8);
      theta = thetaOf(expectedCounts(counts, probabilitiesOf(theta)));
    }
  });

  it('settles at the root of the likelihood equation', () => {
    const fit = expectationMaximisation(counts, probabilitiesOf(LINKAGE.start), (expected) =>
      probabilitiesOf(thetaOf(expected)),
    );
    expectRelative(thetaOf(fit.expected), LINKAGE.expected.theta, 1e-10);
  });

  it('has the published information there', () => {
    const { theta, observedInformation, standardError, logLikelihood } = LINKAGE.expected;
    const at = ([value = NaN]: readonly number[]): number =>
      logLikelihoodOf(counts, probabilitiesOf(value));
    const units = LINKAGE.counts.reduce<number>((total, each) => total + each, 0);
    expectRelative(at([theta]) + units * Math.log(4), logLikelihood, 1e-9);
    const information = -(derivativesOf(at, [theta]).hessian[0] ?? NaN);
    expectRelative(information, observedInformation, 1e-6);
    expectRelative(1 / Math.sqrt(information), standardError, 1e-6);
  });
});

describe('the 2 × 2 table with units known by one margin only', () => {
  const { complete, rowOnly, columnOnly, expected } = PARTLY_CLASSIFIED_TABLE;
  const counts: PartialCount[] = [
    ...complete.flat().map((number, category) => ({ categories: [category], number })),
    ...rowOnly.map((number, row) => ({ categories: [2 * row, 2 * row + 1], number })),
    ...columnOnly.map((number, column) => ({ categories: [column, 2 + column], number })),
  ];
  const uniform = [0.25, 0.25, 0.25, 0.25];
  const total = 478;

  it('has the published example iterate by iterate', () => {
    let probabilities: readonly number[] = uniform;
    for (const iterate of expected.iteratesFromUniform) {
      probabilities = expectedCounts(counts, probabilities).map((number) => number / total);
      iterate.forEach((value, index) => {
        expect(probabilities[index]).toBeCloseTo(value, 10);
      });
    }
  });

  it('settles at the maximum', () => {
    const fit = expectationMaximisation(counts, uniform);
    expectRelative(
      logLikelihoodOf(counts, fit.probabilities),
      expected.logLikelihoodWithoutConstant,
      1e-10,
    );
    expected.probabilities.flat().forEach((value, index) => {
      expect(fit.probabilities[index]).toBeCloseTo(value, 9);
    });
    expected.completeCounts.flat().forEach((value, index) => {
      expect(fit.expected[index]).toBeCloseTo(value, 6);
    });
  });
});

describe('expectationMaximisation', () => {
  it('splits nested levels in proportion to their identified members (closed form)', () => {
    const { species, groups, expected } = NESTED_LEVELS;
    const names = Object.keys(species);
    const fit = expectationMaximisation(
      [
        ...Object.values(species).map((number, category) => ({ categories: [category], number })),
        ...groups.map(({ members, count }) => ({
          categories: members.map((member) => names.indexOf(member)),
          number: count,
        })),
      ],
      [0.25, 0.25, 0.25, 0.25],
    );
    expected.proportions.forEach((value, index) => {
      expect(fit.probabilities[index]).toBeCloseTo(value, 9);
    });
  });

  it('leaves no unit out and makes none up, and no neighbouring mixture is likelier', () => {
    const categories = 4;
    const anyCounts = fc
      .tuple(
        fc.array(fc.integer({ min: 1, max: 60 }), { minLength: categories, maxLength: categories }),
        fc.array(
          fc.record({
            categories: fc.subarray([0, 1, 2, 3], { minLength: 2 }),
            number: fc.nat({ max: 80 }),
          }),
          { maxLength: 4 },
        ),
      )
      .map(([single, partial]): PartialCount[] => [
        ...single.map((number, category) => ({ categories: [category], number })),
        ...partial,
      ]);
    const logLikelihood = (counts: readonly PartialCount[], shares: readonly number[]): number =>
      counts.reduce(
        (total, { categories: places, number }) =>
          total + number * Math.log(places.reduce((sum, place) => sum + (shares[place] ?? 0), 0)),
        0,
      );
    fc.assert(
      fc.property(anyCounts, fc.nat({ max: 3 }), fc.nat({ max: 3 }), (counts, from, to) => {
        const fit = expectationMaximisation(counts, [0.25, 0.25, 0.25, 0.25]);
        const total = counts.reduce((sum, { number }) => sum + number, 0);
        expect(fit.expected.reduce((sum, number) => sum + number, 0)).toBeCloseTo(total, 6);
        const step = (fit.probabilities[from] ?? 0) * 1e-3;
        const moved = fit.probabilities.map(
          (value, index) => value + (index === to ? step : 0) - (index === from ? step : 0),
        );
        expect(logLikelihood(counts, moved)).toBeLessThanOrEqual(
          logLikelihood(counts, fit.probabilities) + 1e-9,
        );
      }),
      { numRuns: 200 },
    );
  });
});
