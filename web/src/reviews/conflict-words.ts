import { plural, t } from '@lingui/core/macro';

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
  const { birdsInConflict: wrong, witness, tallies } = cell;
  return [
    t`No single truth fits all the tallies: at least ${plural(wrong, { one: '# bird', other: '# birds' })} must be wrong.`,
    ...(witness ? [witness] : []),
    tallies.length > 2
      ? t`This is about all birds of the place, with counting error allowed for. A bird is wrong if somebody missed, added or misnamed it, and with more than two tallies it counts once for each observer who has it wrong.`
      : t`This is about all birds of the place, with counting error allowed for. A bird is wrong if somebody missed, added or misnamed it.`,
  ];
}
