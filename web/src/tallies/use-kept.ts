import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { KeptDraft, OutboxItem, OwnPart } from './kept-tables.js';
import { readDrafts } from './draft-store.js';
import { keptAtStart } from './kept-at-start.js';
import { watchKept } from './kept-database.js';
import { openDraft, type DraftState, type OpenDraft } from './open-draft.js';
import { watchOutbox } from './outbox.js';
import { readOwnParts } from './own-part-store.js';

/** A person's tallies that were handed over, oldest first; `null` until it is known. */
export function useOutbox(personId: string): readonly OutboxItem[] | null {
  const [items, setItems] = useState(() => keptAtStart(personId)?.outbox ?? null);
  useEffect(() => watchOutbox(personId, setItems), [personId]);
  return items;
}

/** All drafts of a person; `null` until it is known. */
export function useDrafts(personId: string): readonly KeptDraft[] | null {
  const [drafts, setDrafts] = useState(() => keptAtStart(personId)?.drafts ?? null);
  useEffect(
    () =>
      watchKept(
        (database) => readDrafts(database, personId),
        setDrafts,
        () => setDrafts([]),
      ),
    [personId],
  );
  return drafts;
}

/** The draft for an assignment, to be read and changed. */
export function useOpenDraft(
  personId: string,
  assignmentId: string,
): { readonly open: OpenDraft; readonly state: DraftState } {
  const open = useMemo(() => openDraft(personId, assignmentId), [personId, assignmentId]);
  const subscribe = useMemo(() => (listener: () => void) => open.subscribe(listener), [open]);
  const state = useSyncExternalStore(subscribe, () => open.state);
  return { open, state };
}

/**
 * The parts of counts that are kept for one person; `null` until it is known.
 *
 * @param isWanted false to look for none
 */
export function useKeptOwnParts(personId: string, isWanted = true): readonly OwnPart[] | null {
  const [parts, setParts] = useState(() => keptAtStart(personId)?.parts ?? null);
  useEffect(() => {
    if (!isWanted) return undefined;
    return watchKept(
      (database) => readOwnParts(database, personId),
      setParts,
      () => setParts([]),
    );
  }, [personId, isWanted]);
  return isWanted ? parts : null;
}
