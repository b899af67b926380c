import { describe, expect, it } from 'vitest';
import { estimateFromTwoObservers } from '../../../server/core/agree/detection/two-observers.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { reconcile } from '../../../server/core/reconcile.js';
import { DEFAULT_OPTIONS } from '../../../server/core/simulate/options.js';
import { simulate } from '../../../server/core/simulate/simulate.js';
import { trueHistories } from './true-histories.js';

const ONE_SECTION = {
  ...DEFAULT_OPTIONS,
  sections: 1,
  observers: 2,
  birds: 3000,
  moving: 0,
  placing: 0,
  partial: 0,
  merged: 0,
  parties: 0,
};
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

/** Means over seeds: what the result says and what it would say had it matched without error, a flock there was. */
function compared(detection: number) {
  const each = SEEDS.map((seed) => {
    const options = { ...ONE_SECTION, detection, seed };
    const { flocks, histories } = trueHistories(options);
    const both = histories.filter((history) => !history.includes(false)).length;
    const byPlace = (place: number): number =>
      histories.filter((history) => history[place] === true).length;
    const matched = { first: byPlace(0), second: byPlace(1), both };
    const { snapshot } = simulate(options, defaultProtocol);
    const [found] = reconcile(snapshot, [], defaultProtocol).agreement.detection;
    return {
      both: both / flocks,
      foundBoth: (found?.matched ?? NaN) / flocks,
      estimate: estimateFromTwoObservers(matched).chapman.value / flocks,
      foundEstimate: (found?.flocks.value ?? NaN) / flocks,
    };
  });
  const mean = (of: keyof (typeof each)[number]): number =>
    each.reduce((total, one) => total + one[of], 0) / each.length;
  return {
    both: mean('both'),
    foundBoth: mean('foundBoth'),
    estimate: mean('estimate'),
    foundEstimate: mean('foundEstimate'),
  };
}

describe('detection of made-up flocks', () => {
  it('counts them right where hardly any is missed', () => {
    const { foundBoth, both, foundEstimate } = compared(0.911);
    expect(Math.abs(foundBoth - both)).toBeLessThan(0.03);
    expect(Math.abs(foundEstimate - 1)).toBeLessThan(0.02);
  });

  it('does not take flocks that each missed for seen by both, where many are missed', () => {
    const { foundBoth, both, foundEstimate, estimate } = compared(0.2);
    // Of the flocks, six in ten are seen by both. Matching by what was noted errs both ways.
    expect(both).toBeLessThan(0.7);
    expect(Math.abs(foundBoth - both)).toBeLessThan(0.08);
    expect(Math.abs(foundEstimate - estimate)).toBeLessThan(0.06);
    // Some are harder to see: too low by about a tenth, never too high.
    expect(foundEstimate).toBeGreaterThan(0.8);
    expect(foundEstimate).toBeLessThan(1);
  });
});
