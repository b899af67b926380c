import type { CellGroup, ComparedCell } from '../compare/compare-cell.js';
import type { ConflictWitness } from '../compare/feasibility-witness.js';
import type { SettledGroup } from '../consensus/settle-group.js';
import type { CellFlocks } from '../disagreements/cell-flocks.js';
import type { Protocol } from '../model/protocol.js';
import type { RulingOutcome } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import { applyToGroup } from './apply-to-group.js';
import { basisOfGroup, sameBasis } from './basis.js';
import { targetKey } from './check-contradictions.js';
import { applied, noGroup, talliesChanged } from './outcome-words.js';
import type { ReconciledCell } from './reconciled-cell.js';
import { changesGroups } from './regroup.js';

/** A cell with the drafts of its groups, before rulings. */
export interface DraftedCell {
  readonly compared: ComparedCell;
  readonly flocks: CellFlocks;
  readonly birdsInConflict: number;
  readonly witness: ConflictWitness | null;
  /** Of the rulings that merged or split its groups. */
  readonly outcomes: readonly RulingOutcome[];
  readonly groups: readonly { readonly group: CellGroup; readonly draft: SettledGroup }[];
}

/** Applies the rulings on groups; a group without one keeps its draft. */
export function ruleOnGroups(
  drafts: readonly DraftedCell[],
  rulings: readonly Ruling[],
  protocol: Protocol,
): { cells: ReconciledCell[]; outcomes: RulingOutcome[] } {
  const byTarget = new Map(
    rulings
      .filter((ruling) => ruling.target.kind === 'group' && !changesGroups(ruling))
      .map((ruling) => [targetKey(ruling.target), ruling]),
  );
  const outcomes: RulingOutcome[] = [];
  const met = new Set<string>();
  const cells = drafts.map(
    ({ compared, flocks, birdsInConflict, witness, groups }): ReconciledCell => ({
      compared,
      flocks,
      birdsInConflict,
      witness,
      groups: groups.map(({ group, draft }) => {
        const unruled = {
          group,
          draft,
          ruling: null,
          consensus: draft.consensus,
          lines: draft.lines,
        };
        const key = targetKey({ kind: 'group', cell: compared.cell.id, group: group.taxa });
        const ruling = byTarget.get(key);
        if (ruling === undefined) return unruled;
        met.add(ruling.id);
        if (
          ruling.basis !== null &&
          !sameBasis(ruling.basis, basisOfGroup(compared.cell.looks, group))
        ) {
          outcomes.push({
            id: ruling.id,
            state: 'stale',
            text: talliesChanged(ruling.target),
          });
          return unruled;
        }
        outcomes.push({ id: ruling.id, state: 'applied', text: applied(ruling) });
        return { group, draft, ruling, ...applyToGroup(draft, compared, group, ruling, protocol) };
      }),
    }),
  );
  for (const ruling of byTarget.values()) {
    if (met.has(ruling.id)) continue;
    outcomes.push({ id: ruling.id, state: 'without-target', text: noGroup(ruling.target) });
  }
  return { cells, outcomes };
}
