import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { observerEffects } from '../../../server/core/agree/observer-effects.js';
import type { Measured } from '../../../server/core/agree/measured.js';
import { twoWayModel } from '../../../server/core/agree/two-way-model.js';
import { varianceComponents } from '../../../server/core/estimate/variance-components.js';
import { normalQuantile } from '../../../server/core/math/normal.js';
import { seededRandom } from '../../../server/core/math/seeded-random.js';

interface Truth {
  readonly cells: number;
  readonly observers: number;
  readonly present: number;
  readonly deviations: readonly [cell: number, observer: number, residual: number];
}

function madeUp(
  seed: number,
  { cells, observers, present, deviations }: Truth,
): { measured: Measured[]; effects: number[] } {
  const random = seededRandom(seed);
  const normal = (deviation: number): number =>
    deviation * normalQuantile((random.integer(1 << 20) + 0.5) / (1 << 20));
  const effects = Array.from({ length: observers }, () => normal(deviations[1]));
  const measured = Array.from({ length: cells }, (_, cell) => {
    const level = 4 + normal(deviations[0]);
    return effects.flatMap((effect, observer) =>
      random.uniform() < present
        ? [
            {
              cell: `c${cell}`,
              observer: `o${observer}`,
              value: level + effect + normal(deviations[2]),
            },
          ]
        : [],
    );
  }).flat();
  return { measured, effects };
}

describe('twoWayModel', () => {
  it.each([1, 2, 3, 4, 5])('agrees with dense matrices on data with gaps: seed %i', (seed) => {
    const { measured } = madeUp(seed, {
      cells: 18,
      observers: 5,
      present: 0.6,
      deviations: [1.2, 0.2, 0.15],
    });
    const found = twoWayModel(measured);
    const { variances } = varianceComponents(
      measured.map(({ value }) => value),
      measured.map(() => ''),
      [
        { levels: measured.map(({ cell }) => cell) },
        { levels: measured.map(({ observer }) => observer) },
        { weights: measured.map(() => 1) },
      ],
    );
    [found?.betweenCells, found?.betweenObservers, found?.residual].forEach((component, place) => {
      expect(component?.variance).toBeCloseTo(variances[place] ?? NaN, 5);
    });
  });

  it('finds no variance of observers who do not differ, and gives it no error', () => {
    const { measured } = madeUp(8, {
      cells: 40,
      observers: 3,
      present: 1,
      deviations: [1, 0, 0.2],
    });
    const level = new Map<string, number>();
    for (const { observer, value } of measured)
      level.set(observer, (level.get(observer) ?? 0) + value / 40);
    const even = measured.map((each) => ({
      ...each,
      value: each.value - (level.get(each.observer) ?? 0),
    }));
    const found = twoWayModel(even);
    expect(found?.betweenObservers).toEqual({ variance: 0, standardError: null, interval: null });
    expect(found?.residual.variance).toBeGreaterThan(0.02);
  });

  it('says nothing from too little, and refuses two values of one observer and cell', () => {
    const one = (cell: string, observer: string, value: number): Measured => ({
      cell,
      observer,
      value,
    });
    expect(twoWayModel([])).toBeNull();
    expect(
      twoWayModel([one('a', 'x', 1), one('a', 'y', 2), one('b', 'x', 3), one('b', 'y', 5)]),
    ).toBeNull();
    const exact = ['a', 'b', 'c', 'd'].flatMap((cell, place) => [
      one(cell, 'x', place),
      one(cell, 'y', place + 1),
    ]);
    expect(twoWayModel(exact)).toBeNull();
    expect(() => twoWayModel([one('a', 'x', 1), one('a', 'x', 2)])).toThrow('one value of x for a');
  });

  it('holds the true residual deviation in nine of ten made-up surveys or more', () => {
    let held = 0;
    for (let seed = 100; seed < 160; seed += 1) {
      const { measured } = madeUp(seed, {
        cells: 15,
        observers: 4,
        present: 0.8,
        deviations: [1, 0.1, 0.2],
      });
      const interval = twoWayModel(measured)?.residual.interval;
      if (interval && interval.low <= 0.04 && 0.04 <= interval.high) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(54);
  }, 60_000);
});

describe('observerEffects', () => {
  it('is the plain difference of means where all counted everything', () => {
    const values = [
      [1, 3],
      [2, 5],
      [4, 5],
    ];
    const found = observerEffects(
      values.flatMap(([x = NaN, y = NaN], cell) => [
        { cell: `${cell}`, observer: 'x', value: x },
        { cell: `${cell}`, observer: 'y', value: y },
      ]),
    );
    // Differences 2, 3, 1: mean 2, variance 1; an effect is half of it, its error half of 1/√3.
    expect(found?.observers[0]).toMatchObject({ observer: 'x', n: 3, set: 1 });
    expect(found?.observers[0]?.effect).toBeCloseTo(-1, 12);
    expect(found?.observers[0]?.standardError).toBeCloseTo(0.5 / Math.sqrt(3), 12);
    expect(found?.residualVariance).toBeCloseTo(0.5, 12);
    expect(found?.degreesOfFreedom).toBe(2);
  });

  it('tells apart sets of observers who never met', () => {
    const cells = [
      ['a', 'x', 'y'],
      ['b', 'x', 'y'],
      ['c', 'u', 'v'],
      ['d', 'u', 'v'],
    ] as const;
    const found = observerEffects(
      cells.flatMap(([cell, one, other], place) => [
        { cell, observer: one, value: place },
        { cell, observer: other, value: place * 1.5 },
      ]),
    );
    expect(found?.observers.map(({ observer, set }) => [observer, set])).toEqual([
      ['u', 1],
      ['v', 1],
      ['x', 2],
      ['y', 2],
    ]);
  });

  it('does not mind who got the large cells, the order, or a shift of a cell (property)', () => {
    const seeds = fc.integer({ min: 1, max: 10_000 });
    fc.assert(
      fc.property(seeds, (seed) => {
        const { measured } = madeUp(seed, {
          cells: 9,
          observers: 4,
          present: 0.7,
          deviations: [1, 0.3, 0.2],
        });
        const found = observerEffects(measured);
        const moved = observerEffects(
          [...measured].reverse().map((each) => ({
            ...each,
            value: each.value + 3 * each.cell.length + (each.cell.charCodeAt(1) % 7),
          })),
        );
        expect(moved?.observers.length).toBe(found?.observers.length);
        found?.observers.forEach(({ effect, standardError }, place) => {
          expect(moved?.observers[place]?.effect).toBeCloseTo(effect, 9);
          expect(moved?.observers[place]?.standardError).toBeCloseTo(standardError, 9);
        });
      }),
      { numRuns: 50 },
    );
  });
});
