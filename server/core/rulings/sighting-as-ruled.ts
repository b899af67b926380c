import { linesInGroup } from '../compare/compare-cell.js';
import type { Sighting } from '../model/result.js';
import type { ReconciledCell } from './reconciled-cell.js';

/**
 * By how much rulings have changed the groups that a sighting's birds are in: 1 where none has. A
 * sighting's number is the mean of its observers; where a ruling settles its groups otherwise, its
 * birds change with them.
 */
export function changeByRulings(
  sighting: Pick<Sighting, 'cell' | 'lines'>,
  cells: readonly ReconciledCell[],
): number {
  const cell = cells.find(({ compared }) => compared.cell.id === sighting.cell);
  const groups = (cell?.groups ?? []).filter(({ group }) =>
    cell?.compared.cell.looks.some((look) =>
      linesInGroup(look, group).some((line) =>
        line.sources.some((source) => sighting.lines.includes(source.id)),
      ),
    ),
  );
  const drafted = groups.reduce((sum, { draft }) => sum + draft.consensus.number, 0);
  const standing = groups.reduce((sum, { consensus }) => sum + consensus.number, 0);
  return drafted === 0 ? 1 : standing / drafted;
}
