import { birdsIn, linesInGroup } from '../compare/compare-cell.js';
import { numberOf } from '../model/quantity.js';
import type { Sighting } from '../model/result.js';
import type { ReconciledCell } from '../rulings/reconciled-cell.js';

/**
 * Birds that a sighting contributes to what its cell is settled at, in parts of birds: each of its
 * lines by the number of observers who enter the consensus of the line's group, so that a flock of
 * 40 that one of two observers has contributes 20. Where a ruling, or a rule other than the mean,
 * settles the group otherwise, it changes with the group.
 *
 * A line of an observer who does not enter contributes nothing, nor does a sighting of a cell that
 * is not among these.
 */
export function contributionOf(
  { cell: id, lines }: Pick<Sighting, 'cell' | 'lines'>,
  cells: readonly ReconciledCell[],
): number {
  const cell = cells.find(({ compared }) => compared.cell.id === id);
  if (cell === undefined) return 0;
  const parts = cell.groups.map(({ group, consensus }) => {
    const entering = cell.compared.cell.looks
      .filter(({ observer }) => consensus.observers.includes(observer))
      .flatMap((look) => linesInGroup(look, group));
    const own = entering
      .flatMap(({ sources }) => sources)
      .filter((source) => lines.includes(source.id))
      .reduce((sum, { quantity }) => sum + (numberOf(quantity) ?? 0), 0);
    // Over the mean of the totals, the number of observers cancels out.
    return own === 0 ? 0 : (own * consensus.number) / birdsIn(entering);
  });
  return parts.reduce((sum, part) => sum + part, 0);
}
