import { v7 } from 'uuid';
import { asDraft } from './as-draft.js';
import { changedDraft, settledDraft, type DraftChange } from './draft-change.js';
import type { Draft } from './draft.js';
import { keptDatabase } from './kept-database.js';
import type { KeptDatabase, KeptDraft } from './kept-tables.js';

/**
 * The draft as kept; `null` where there is none that can be read.
 *
 * @param known states that the caller has in hand: one of them is not read field by field again, since
 *   every tap brings its own back
 */
export async function readDraft(
  database: KeptDatabase,
  personId: string,
  assignmentId: string,
  known: ReadonlySet<string> = new Set(),
): Promise<KeptDraft | null> {
  const row = await database.drafts.get([personId, assignmentId]);
  return row !== undefined && row.rivals.length === 0 && known.has(row.edit) ? row : asKept(row);
}

/** All drafts of one person. */
export async function readDrafts(
  database: KeptDatabase,
  personId: string,
): Promise<readonly KeptDraft[]> {
  const rows = await database.drafts.where('personId').equals(personId).toArray();
  return rows.map(asKept).filter((kept) => kept !== null);
}

/** Drafts of any age, those in versions that wait for a choice too. */
function asKept(row: KeptDraft | undefined): KeptDraft | null {
  if (row === undefined) return null;
  const draft = asDraft(row.draft);
  if (draft === null) return null;
  const rivals = row.rivals.flatMap((rival) => {
    const other = asDraft(rival.draft);
    return other === null ? [] : [{ ...rival, draft: other }];
  });
  return { ...row, draft, rivals };
}

/** Whether a change was kept in its place, beside another's change, or not at all. */
export type Keeping = 'kept' | 'beside' | 'not-kept';

/** Keeps a change of a draft, never over a change that was made elsewhere meanwhile. */
export async function keepDraft(personId: string, change: DraftChange): Promise<Keeping> {
  try {
    const database = await keptDatabase();
    return await database.transaction('rw', database.drafts, async () => {
      const row = await database.drafts.get([personId, change.draft.assignmentId]);
      const next = changedDraft(row, personId, change, Date.now());
      await database.drafts.put(next);
      return next.edit === change.edit ? 'kept' : 'beside';
    });
  } catch {
    return 'not-kept';
  }
}

/**
 * Goes on with one of several versions of a draft.
 *
 * @param seen the states that were shown to the observer
 */
export async function settleDraft(
  personId: string,
  draft: Draft,
  seen: readonly string[],
): Promise<void> {
  const database = await keptDatabase();
  await database.transaction('rw', database.drafts, async () => {
    const row = await database.drafts.get([personId, draft.assignmentId]);
    if (row === undefined) return;
    const chosen = { draft, edit: v7(), keptAt: Date.now() };
    await database.drafts.put(settledDraft(row, chosen, seen));
  });
}

export async function forgetDraft(personId: string, assignmentId: string): Promise<void> {
  try {
    await (await keptDatabase()).drafts.delete([personId, assignmentId]);
  } catch {
    // Nothing was kept, then.
  }
}
