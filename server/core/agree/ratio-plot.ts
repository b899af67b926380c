import type { RatioPlot, RatioPoint } from '../model/agreement.js';
import { ratioLimitsOfAgreement } from './bland-altman.js';
import type { ComparedUnit } from './compared-units.js';
import { noStatistic, statisticOf } from './statistic.js';

/** A limit of agreement from fewer points has an interval that says nothing. */
const FEWEST_POINTS = 3;

/**
 * Ratios of two observers' totals, group by group, with their limits of agreement (Bland & Altman
 * 1986 on ln counts, back-transformed; intervals exact, Carkeet 2015). Groups that either saw none of
 * have no ratio and are no point.
 *
 * @param units of one pair of observers
 */
export function ratioPlotOf(units: readonly ComparedUnit[], minimumUnits: number): RatioPlot {
  const points = units
    .filter(({ totalA, totalB }) => totalA > 0 && totalB > 0)
    .map(({ cell, group, totalA, totalB }): RatioPoint => ({
      cell,
      group,
      a: totalA,
      b: totalB,
      mean: rounded(Math.sqrt(totalA * totalB)),
      ratio: rounded(totalA / totalB),
    }))
    .sort((one, other) => (keyOf(one) < keyOf(other) ? -1 : 1));
  const n = points.length;
  if (n < Math.max(FEWEST_POINTS, minimumUnits)) {
    const none = noStatistic(n);
    return { points, meanRatio: none, lower: none, upper: none };
  }
  const limits = ratioLimitsOfAgreement(
    points.map(({ a }) => a),
    points.map(({ b }) => b),
  );
  return {
    points,
    meanRatio: statisticOf(limits.meanRatio.value, limits.meanRatio, n),
    lower: statisticOf(limits.lower.value, limits.lower, n),
    upper: statisticOf(limits.upper.value, limits.upper, n),
  };
}

function keyOf({ cell, group }: RatioPoint): string {
  return `${cell}\n${group}`;
}

function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
