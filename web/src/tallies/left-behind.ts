import { forgetKept, readKept, writeKept } from '../ui/kept.js';
import { asDraft } from './as-draft.js';
import type { DraftChange } from './draft-change.js';

/** A change that the database had not finished writing when the page went away. */
export interface LeftBehind extends DraftChange {
  readonly personId: string;
}

const prefix = 'countersign.left-behind.';

/**
 * A page that is closed cannot wait for the database. The browser's plain storage writes at once, so
 * what is still on its way is left there, and is put in its place when the database is next opened.
 */
export function leaveBehind(left: LeftBehind): void {
  writeKept(prefix + left.edit, left);
}

/** The change has arrived after all. */
export function forgetLeftBehind(edit: string): void {
  forgetKept(prefix + edit);
}

/** @returns what was left behind under a key of the browser's plain storage, if that is what it holds */
export function leftBehindAt(key: string): LeftBehind | null {
  if (!key.startsWith(prefix)) return null;
  const left = readKept(key, isLeftBehind);
  const draft = asDraft(left?.draft);
  return left === null || draft === null ? null : { ...left, draft };
}

function isLeftBehind(value: unknown): value is LeftBehind {
  return (
    typeof value === 'object' &&
    value !== null &&
    'personId' in value &&
    typeof value.personId === 'string' &&
    'edit' in value &&
    typeof value.edit === 'string' &&
    'seen' in value &&
    Array.isArray(value.seen) &&
    'draft' in value
  );
}
