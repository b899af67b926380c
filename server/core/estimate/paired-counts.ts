import { alignCells } from '../align/cells.js';
import {
  compareCell,
  countsAllOf,
  linesInGroup,
  seeksGroup,
  sharesMember,
} from '../compare/compare-cell.js';
import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { Method, Snapshot } from '../model/snapshot.js';
import { lookAlikesFrom } from '../taxa/candidate-set.js';

/** One observer's count of a group of birds that another counted independently as well. */
export interface PairedCount {
  /** The same for all counts of one group of birds. */
  readonly group: string;
  /** Person id; ids joined by `+` where several together covered the place. */
  readonly observer: string;
  /** Birds on each tally line, over 0, and how they were counted. */
  readonly lines: readonly { readonly method: Method; readonly number: number }[];
}

/**
 * The groups of a count that two or more independent observers counted in full, with birds of each:
 * what counting error can be told from. Observers who share a member with another of the cell are
 * left out, birds flying through as well: they may have passed before the other looked.
 *
 * @param counts their ids tell groups of different counts apart
 */
export function pairedCounts(
  counts: readonly { readonly snapshot: Snapshot; readonly protocol: Protocol }[],
): PairedCount[] {
  return counts.flatMap(({ snapshot, protocol }, place) => {
    const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
    const using = alignCells(snapshot).filter(({ layer }) => layer === 'using');
    return using.flatMap((cell) => {
      const alone = cell.looks.filter(
        (look) =>
          !cell.looks.some((other) => other !== look && other.full && sharesMember(look, other)),
      );
      return compareCell(cell, lookAlikes).groups.flatMap((group) => {
        const found = alone
          .filter((look) => countsAllOf(look, group) && seeksGroup(look, group))
          .map((look) => ({
            group: `${place}:${snapshot.id}:${cell.id}:${group.id}`,
            observer: look.observer,
            lines: linesInGroup(look, group)
              .flatMap(({ sources }) => sources)
              .map(({ method, quantity }) => ({ method, number: numberOf(quantity) ?? 0 }))
              .filter(({ number }) => number > 0),
          }))
          .filter(({ lines }) => lines.length > 0);
        return found.length < 2 ? [] : found;
      });
    });
  });
}
