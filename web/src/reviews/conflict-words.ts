import { countOf } from '../ui/words.js';

/** What a cell says of whether one truth fits all its tallies. */
export interface CellFit {
  readonly feasible: boolean;
  readonly birdsInConflict: number;
  readonly witness?: string | null | undefined;
  readonly tallies: readonly unknown[];
}

/**
 * Why the tallies of a place cannot all be right, a sentence each, the most important first; empty
 * where one truth fits them all.
 */
export function conflictSentences(cell: CellFit): readonly string[] {
  if (cell.feasible) return [];
  const each =
    cell.tallies.length > 2
      ? ', and with more than two tallies it counts once for each observer who has it wrong'
      : '';
  return [
    `No single truth fits all the tallies: at least ${countOf(cell.birdsInConflict, 'bird')} must be wrong.`,
    ...(cell.witness ? [cell.witness] : []),
    `This is about all birds of the place, with counting error allowed for. A bird is wrong if somebody missed, added or misnamed it${each}.`,
  ];
}
