import { forgetKept, readKept, writeKept } from '../ui/kept.js';
import { asDraft } from './as-draft.js';
import type { Draft } from './draft.js';

/** Drafts are kept per person and assignment: several observers may share a phone. */
function keyOf(personId: string, assignmentId: string): string {
  return `countersign.draft.${personId}.${assignmentId}`;
}

function isAnything(value: unknown): value is unknown {
  return value !== undefined;
}

export function readDraft(personId: string, assignmentId: string): Draft | null {
  return asDraft(readKept(keyOf(personId, assignmentId), isAnything));
}

/** False if the browser would not keep it: the observer must be told. */
export function keepDraft(personId: string, draft: Draft): boolean {
  return writeKept(keyOf(personId, draft.assignmentId), draft);
}

export function forgetDraft(personId: string, assignmentId: string): void {
  forgetKept(keyOf(personId, assignmentId));
}
