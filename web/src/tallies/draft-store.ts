import { forgetKept, readKept, writeKept } from '../ui/kept.js';
import type { Draft } from './draft.js';

/** Drafts are kept per person and assignment: several observers may share a phone. */
function keyOf(personId: string, assignmentId: string): string {
  return `countersign.draft.${personId}.${assignmentId}`;
}

function isDraft(value: unknown): value is Draft {
  return (
    typeof value === 'object' &&
    value !== null &&
    'id' in value &&
    typeof value.id === 'string' &&
    'assignmentId' in value &&
    'lines' in value &&
    Array.isArray(value.lines) &&
    'start' in value &&
    typeof value.start === 'string' &&
    'party' in value &&
    Array.isArray(value.party)
  );
}

export function readDraft(personId: string, assignmentId: string): Draft | null {
  return readKept(keyOf(personId, assignmentId), isDraft);
}

/** False if the browser would not keep it: the observer must be told. */
export function keepDraft(personId: string, draft: Draft): boolean {
  return writeKept(keyOf(personId, draft.assignmentId), draft);
}

export function forgetDraft(personId: string, assignmentId: string): void {
  forgetKept(keyOf(personId, assignmentId));
}
