import { useCallback, useEffect, useRef, useState } from 'react';
import { keepDraft } from './draft-store.js';
import { changed, redone, undone, type DraftHistory } from './draft-history.js';
import type { Draft } from './draft.js';
import { historyOf, keepSteps } from './steps-store.js';
import type { UndoProps } from './undo-buttons.js';

/**
 * Changes the draft as it is by then.
 *
 * @param by set while somebody types into one field: its characters are undone together
 */
export type ChangeDraft = (edit: (draft: Draft) => Draft, by?: string) => void;

/** Steps are for undoing only: they may wait until nobody is tapping. */
const KEEP_STEPS_AFTER = 400;

/** A draft that is kept on the phone with every change, and whose changes can be undone. */
export function useDraft(
  personId: string,
  first: Draft,
  onChanged: (draft: Draft) => void,
): {
  readonly draft: Draft;
  /** False if the browser would not keep it. */
  readonly isKept: boolean;
  readonly change: ChangeDraft;
  readonly undo: UndoProps;
} {
  const [history, setHistory] = useState<DraftHistory>(() => historyOf(personId, first));
  const [isKept, setKept] = useState(true);
  const { draft, past, future } = history;
  const lastKept = useRef(draft);

  useEffect(() => {
    if (lastKept.current === draft) return;
    lastKept.current = draft;
    setKept(keepDraft(personId, draft));
    onChanged(draft);
  }, [personId, draft, onChanged]);

  useEffect(() => {
    const keep = (): void => keepSteps(personId, history);
    const timer = setTimeout(keep, KEEP_STEPS_AFTER);
    window.addEventListener('pagehide', keep);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('pagehide', keep);
    };
  }, [personId, history]);

  const change = useCallback<ChangeDraft>((edit, by) => {
    setHistory((last) => changed(last, edit(last.draft), by ?? null));
  }, []);
  const undo = useCallback(() => setHistory(undone), []);
  const redo = useCallback(() => setHistory(redone), []);
  const [lastStep, nextStep] = [past.at(-1), future.at(-1)];
  return { draft, isKept, change, undo: { draft, lastStep, nextStep, undo, redo } };
}
