import type { AgreementMeasures, NumberMeasures, Statistic } from '../model/agreement.js';
import { clusterBootstrapIntervals, type OfSums } from './cluster-bootstrap.js';
import { isOnePair, sumByCluster } from './cluster-sums.js';
import type { ComparedUnit } from './compared-units.js';
import { concordanceOfSums, linConcordance } from './lin-concordance.js';
import { nameMeasuresOf } from './name-measures.js';
import { shareMeasuresOf } from './share-measures.js';
import { noStatistic, statisticOf } from './statistic.js';
import { totalsAlphaOf } from './totals-alpha.js';

const LEVEL = 0.95;

/** Sums that a concordance is made of. */
const [N, X, Y, XX, YY, XY] = [0, 1, 2, 3, 4, 5];

/**
 * All agreement measures of a set of compared units.
 *
 * n is the number of clusters (groups of a cell, or cells for one taxon): pairs of observers who
 * counted the same birds do not make more of them. With fewer than `minimumUnits` there is no value.
 *
 * Where the units are of several pairs of observers, who is called a and who b means nothing: each
 * unit then enters kappa and concordance both ways round, so that observers' names change nothing.
 */
export function measuresOf(
  units: readonly ComparedUnit[],
  minimumUnits: number,
): AgreementMeasures {
  return { ...numberMeasuresOf(units, minimumUnits), ...nameMeasuresOf(units, minimumUnits) };
}

/** The measures that make sense for one taxon too: all but kappas. */
export function numberMeasuresOf(
  units: readonly ComparedUnit[],
  minimumUnits: number,
): NumberMeasures {
  const { percentAgreement, brayCurtisSimilarity, withinTolerance } = shareMeasuresOf(
    units,
    minimumUnits,
  );
  return {
    percentAgreement,
    brayCurtisSimilarity,
    concordance: concordanceOf(units, minimumUnits),
    withinTolerance,
    alpha: totalsAlphaOf(units, minimumUnits),
  };
}

/**
 * Lin's concordance of ln totals. A zero has no logarithm: units of which one observer saw none are
 * left out here, and count in the other measures.
 */
function concordanceOf(units: readonly ComparedUnit[], minimumUnits: number): Statistic {
  const seenByBoth = units.filter((unit) => unit.totalA > 0 && unit.totalB > 0);
  const onePair = isOnePair(units);
  const { clusters, sums } = sumByCluster(seenByBoth, (unit) => {
    const [x, y] = [Math.log(unit.totalA), Math.log(unit.totalB)];
    const xy = x * y;
    return onePair
      ? [
          [N, 1],
          [X, x],
          [Y, y],
          [XX, x * x],
          [YY, y * y],
          [XY, xy],
        ]
      : [
          [N, 2],
          [X, x + y],
          [Y, x + y],
          [XX, x * x + y * y],
          [YY, x * x + y * y],
          [XY, 2 * xy],
        ];
  });
  const n = clusters.length;
  if (n < Math.max(3, minimumUnits)) return noStatistic(n);
  if (onePair) {
    const found = linConcordance(
      seenByBoth.map((unit) => Math.log(unit.totalA)),
      seenByBoth.map((unit) => Math.log(unit.totalB)),
      LEVEL,
    );
    return statisticOf(found.value, found, n);
  }
  const value: OfSums = (totals) => {
    return concordanceOfSums({
      n: totals[N] ?? 0,
      x: totals[X] ?? 0,
      y: totals[Y] ?? 0,
      xx: totals[XX] ?? 0,
      yy: totals[YY] ?? 0,
      xy: totals[XY] ?? 0,
    });
  };
  const [interval] = clusterBootstrapIntervals(clusters, sums.length, [value], LEVEL);
  return statisticOf(value(sums), interval ?? null, n);
}
