import { totalOf, type ReconciledCell } from '../rulings/reconciled-cell.js';

/**
 * The cells that are compiled: of cells that are successive counts of a place within a window, the
 * one with the most birds, then the earliest.
 */
export function compiledCells(cells: readonly ReconciledCell[]): ReconciledCell[] {
  const using = cells.filter((cell) => cell.compared.cell.layer === 'using');
  const ranked = [...using].sort(
    (one, other) =>
      totalOf(other) - totalOf(one) || (one.compared.cell.id < other.compared.cell.id ? -1 : 1),
  );
  const dropped = new Set<string>();
  for (const { compared } of ranked) {
    if (dropped.has(compared.cell.id)) continue;
    for (const id of compared.cell.successiveTo) dropped.add(id);
  }
  return cells.filter(
    ({ compared }) => !dropped.has(compared.cell.id.replace(/:flying-through$/, '')),
  );
}
