import { useCallback, useEffect, useLayoutEffect, useState } from 'react';
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

/** Sets fields of the draft; `by` as in `ChangeDraft`. */
export type SetDraft = (fields: Partial<Draft>, by?: string) => void;

/** Steps are for undoing only: they may wait until nobody is tapping. */
const KEEP_STEPS_AFTER = 400;

/** A draft whose changes can be undone; each is handed on at once to be kept. */
export function useDraft(
  personId: string,
  props: {
    /** The draft as it is kept. */
    readonly first: Draft;
    /** How often it was changed elsewhere: its steps here are of no use then. */
    readonly arrivals: number;
    readonly onChanged: (draft: Draft) => void;
  },
): {
  readonly draft: Draft;
  readonly change: ChangeDraft;
  readonly undo: UndoProps;
} {
  const { first, arrivals, onChanged } = props;
  const [history, setHistory] = useState<DraftHistory>(() => historyOf(personId, first));
  const [arrived, setArrived] = useState(arrivals);
  if (arrived !== arrivals) {
    setArrived(arrivals);
    setHistory(historyOf(personId, first));
  }
  const { draft, past, future } = history;

  // Before anything else can happen: a page that goes away from now on leaves the change behind, and the
  // database is asked to keep it as soon as it is on the screen.
  useLayoutEffect(() => {
    if (arrived === arrivals && draft !== first) onChanged(draft);
  }, [draft, first, arrived, arrivals, onChanged]);

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
  return { draft, change, undo: { draft, lastStep, nextStep, undo, redo } };
}
