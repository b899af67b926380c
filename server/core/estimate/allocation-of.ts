import type { Protocol } from '../model/protocol.js';
import type { AllocatedSpecies, CompiledLine } from '../model/result.js';
import type { ReconciledCell, ReconciledGroup } from '../rulings/reconciled-cell.js';
import { keyOf } from '../taxa/candidate-set.js';
import { allocate } from './allocate.js';

/**
 * The allocation of a compiled count: its pairs and groups shared out, with the spread of the
 * mixture between the cells that were compiled.
 *
 * @param reported a window id, or the count id where windows are averaged
 */
export function allocationOf(
  cells: readonly ReconciledCell[],
  reported: string,
  lines: readonly CompiledLine[],
  protocol: Protocol,
): AllocatedSpecies[] {
  const using = cells.filter(({ compared }) => compared.cell.layer === 'using');
  const ofWindow = using.filter(({ compared }) => compared.cell.window === reported);
  const compiled = ofWindow.length > 0 ? ofWindow : using;
  const windows = new Set(compiled.map(({ compared }) => compared.cell.window)).size;
  const disputed = disputedBirds(compiled.flatMap(({ groups }) => groups));
  return allocate(
    lines.map(({ candidates, number }) => ({
      candidates,
      number,
      disputed: Math.min(number, Math.round((disputed.get(keyOf(candidates)) ?? 0) / windows)),
    })),
    compiled.map(({ groups }) => groups.flatMap((group) => group.lines)),
    protocol.minimumUnits,
  );
}

/** Birds at a pair or group because observers named them differently and no ruling says which. */
function disputedBirds(groups: readonly ReconciledGroup[]): ReadonlyMap<string, number> {
  const birds = new Map<string, number>();
  for (const { draft, ruling } of groups) {
    if (ruling !== null && ruling.decision.kind !== 'let-stand') continue;
    for (const { kind, candidates, share } of draft.portions) {
      if (kind !== 'differently') continue;
      const key = keyOf(candidates);
      birds.set(key, (birds.get(key) ?? 0) + share * draft.consensus.number);
    }
  }
  return birds;
}
