import type { CellGroup, ComparedCell } from '../compare/compare-cell.js';
import type { ConflictWitness } from '../compare/feasibility-witness.js';
import type { CellFlocks } from '../disagreements/cell-flocks.js';
import type { Consensus } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import type { SettledGroup, SettledLine } from '../consensus/settle-group.js';

/** A group with its draft, the ruling applied to it if any, and what stands in the end. */
export interface ReconciledGroup {
  readonly group: CellGroup;
  readonly draft: SettledGroup;
  readonly ruling: Ruling | null;
  readonly consensus: Consensus;
  readonly lines: readonly SettledLine[];
}

export interface ReconciledCell {
  readonly compared: ComparedCell;
  /** Its flocks, matched between observers. */
  readonly flocks: CellFlocks;
  /** The fewest birds that must be wrong, whatever the truth. */
  readonly birdsInConflict: number;
  /** Why some must be wrong; `null` where none need be. */
  readonly witness: ConflictWitness | null;
  readonly groups: readonly ReconciledGroup[];
}

/** Birds in a cell as it stands. */
export function totalOf(cell: ReconciledCell): number {
  return cell.groups.reduce((sum, { consensus }) => sum + consensus.number, 0);
}
