import { Refusal } from '../core/refusal.js';
import { say, type Wording } from '../core/model/saying.js';

/** Whoever is signed in. */
export interface Viewer {
  readonly personId: string;
  readonly name: string;
  /** The session's key in the database. */
  readonly session: string;
  /** The counts that this session opens; null: every count that the person takes part in. */
  readonly counts: readonly string[] | null;
  /** In which words this person reads what is found and done. */
  readonly wording: Wording;
}

/** @throws Refusal NOT_SIGNED_IN */
export function signedIn(viewer: Viewer | null): Viewer {
  if (viewer === null) {
    throw new Refusal(
      'NOT_SIGNED_IN',
      say(
        'Nobody is signed in. Open your invite link again, or sign in with your name and password.',
      ),
    );
  }
  return viewer;
}

/** Whether this session may know of the count at all. */
export function mayEnter(viewer: Viewer, countId: string): boolean {
  return viewer.counts === null || viewer.counts.includes(countId);
}
