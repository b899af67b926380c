import type { Look } from '../align/looks.js';
import { linesInGroup, sharesMember, type CellGroup } from '../compare/compare-cell.js';
import { logDeviation, varianceOf } from '../compare/counting-error.js';
import { UnionFind } from '../math/union-find.js';
import type { Protocol } from '../model/protocol.js';

/**
 * One independent count of a group: a look, or looks that share a member taken together. They are
 * never used as two, and none of them is preferred, so that no name decides.
 */
export interface Unit {
  readonly looks: readonly Look[];
  /** Mean of the looks' totals; whole unless looks were taken together. */
  readonly total: number;
  /** The highest of the looks' totals. */
  readonly highest: number;
  /** Variance of ln total from known counting error; 0 for a count without error. */
  readonly logVariance: number;
}

/** Independent counts of a group among these looks. */
export function unitsOf(looks: readonly Look[], group: CellGroup, protocol: Protocol): Unit[] {
  const clusters = new UnionFind(looks.length);
  looks.forEach((one, i) => {
    looks.forEach((other, j) => {
      if (i < j && sharesMember(one, other)) clusters.join(i, j);
    });
  });
  return clusters.sets().map((members) => {
    const own = members.flatMap((index) => looks[index] ?? []);
    const counts = own.map((look) => totalIn(look, group));
    const variances = own.map((look) => logVarianceOf(look, group, protocol));
    return {
      looks: own,
      total: meanOf(counts),
      highest: Math.max(...counts),
      logVariance: meanOf(variances),
    };
  });
}

/** A look's birds in a group. */
export function totalIn(look: Look, group: CellGroup): number {
  return linesInGroup(look, group).reduce((sum, line) => sum + line.number, 0);
}

function logVarianceOf(look: Look, group: CellGroup, protocol: Protocol): number {
  const total = totalIn(look, group);
  if (total === 0) return 0;
  const variance = linesInGroup(look, group)
    .flatMap((line) => line.sources)
    .reduce((sum, source) => sum + varianceOf(source, protocol), 0);
  return logDeviation(Math.sqrt(variance) / total) ** 2;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
