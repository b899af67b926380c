import type { Rule } from '../model/protocol.js';
import { tau2OfGroup, usableVariance } from './between-observers.js';
import { derSimonianLairdTau2 } from './der-simonian-laird.js';
import { median } from './median.js';
import { randomEffectsMean } from './random-effects-mean.js';
import { robustMean } from './robust-mean.js';
import type { Unit } from './units.js';

/**
 * What each rule makes of the independent counts of a group (method section 6). Rules on ln counts
 * (random effects, robust mean) cannot use zeros and leave them out; the weighted mean does as well.
 *
 * @param units at least one.
 * @param tau2OfCell as `between-observers.ts` finds it for the cell.
 * @param designated the designated observer's total, if there is such a tally.
 * @returns plain numbers, not yet rounded to whole birds.
 */
export function numbersByRule(
  units: readonly Unit[],
  designated: number | null,
  tau2OfCell: number,
): Partial<Record<Rule, number>> {
  const totals = units.map((unit) => unit.total);
  const positive = units.filter((unit) => unit.total > 0);
  const logs = positive.map((unit) => Math.log(unit.total));
  return {
    ...(designated === null ? {} : { designated }),
    highest: Math.max(...units.map((unit) => unit.highest)),
    mean: totals.reduce((sum, total) => sum + total, 0) / totals.length,
    median: median(totals),
    'random-effects': positive.length === 0 ? 0 : Math.exp(randomEffects(positive)),
    'weighted-mean': positive.length === 0 ? 0 : weightedMean(positive, tau2OfCell),
    'robust-mean': positive.length === 0 ? 0 : Math.exp(robustMean(logs).mean),
  };
}

function randomEffects(units: readonly Unit[]): number {
  const logs = units.map((unit) => Math.log(unit.total));
  const [only] = logs;
  if (logs.length === 1 && only !== undefined) return only;
  const variances = units.map(usableVariance);
  return randomEffectsMean(logs, variances, derSimonianLairdTau2(logs, variances)).mean;
}

/**
 * The mean of the counts themselves, weighted by 1/(known variance + τ²) with the τ² that the whole
 * cell gives: a count by a finer method has more say, unless the observers differ by more than
 * their methods explain. The mean of ln counts lies lower, the more so where somebody overlooked
 * birds.
 */
function weightedMean(units: readonly Unit[], tau2OfCell: number): number {
  const tau2 = tau2OfGroup(units, tau2OfCell);
  const weights = units.map((unit) => 1 / (usableVariance(unit) + tau2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return units.reduce((sum, unit, index) => sum + ((weights[index] ?? 0) / total) * unit.total, 0);
}
