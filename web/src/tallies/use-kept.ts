import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { KeptDraft, OutboxItem } from './kept-tables.js';
import { readDrafts } from './draft-store.js';
import { watchKept } from './kept-database.js';
import { openDraft, type DraftState, type OpenDraft } from './open-draft.js';
import { watchOutbox } from './outbox.js';

/** A person's tallies that were handed over, oldest first; `null` until it is known. */
export function useOutbox(personId: string): readonly OutboxItem[] | null {
  const [items, setItems] = useState<readonly OutboxItem[] | null>(null);
  useEffect(() => watchOutbox(personId, setItems), [personId]);
  return items;
}

/** All drafts of a person; `null` until it is known. */
export function useDrafts(personId: string): readonly KeptDraft[] | null {
  const [drafts, setDrafts] = useState<readonly KeptDraft[] | null>(null);
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
