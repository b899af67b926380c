import type { Draft } from './draft.js';
import type { DraftVersion, KeptDraft } from './kept-tables.js';

/** A change of a draft, as a tab made it. */
export interface DraftChange {
  readonly draft: Draft;
  /** The name of the new state. */
  readonly edit: string;
  /** The states that the tab had seen when it made the change, its own among them. */
  readonly seen: readonly string[];
}

/**
 * The kept draft after a change. A change made on a state that another tab has changed since does not
 * overwrite it: it stands beside it until the observer chooses. The same change twice is one.
 *
 * @param row what is kept; `undefined` where nothing is: it is new, or was sent or given up elsewhere,
 *   and what is written here is kept all the same
 * @param keptAt milliseconds since 1970
 */
export function changedDraft(
  row: KeptDraft | undefined,
  personId: string,
  { draft, edit, seen }: DraftChange,
  keptAt: number,
): KeptDraft {
  const version: DraftVersion = { draft, edit, keptAt };
  if (row === undefined) {
    return { personId, assignmentId: draft.assignmentId, ...version, rivals: [] };
  }
  if (row.edit === edit || row.rivals.some((rival) => rival.edit === edit)) return row;
  if (seen.includes(row.edit)) return { ...row, ...version };
  const others = row.rivals.filter((rival) => !seen.includes(rival.edit));
  return { ...row, rivals: [...others, version] };
}

/**
 * The kept draft after the observer chose one of several versions to go on with. A version that came
 * since they looked stays to be chosen from.
 *
 * @param seen the states that were shown
 */
export function settledDraft(
  row: KeptDraft,
  chosen: DraftVersion,
  seen: readonly string[],
): KeptDraft {
  const { draft, edit, keptAt } = row;
  const unseen = [{ draft, edit, keptAt }, ...row.rivals].filter(
    (version) => !seen.includes(version.edit),
  );
  return { ...row, ...chosen, rivals: unseen };
}
