import { readKept, writeKept } from '../ui/kept.js';
import { asLine } from './as-draft.js';
import type { Draft } from './draft.js';
import { beginHistory, type DraftHistory, type Patch, type Step } from './draft-history.js';

/** How many steps outlive a reload: those that somebody would still want back. */
const MOST_KEPT = 60;

interface KeptSteps {
  /** The draft that they are of, and how it looked after the last of them. */
  readonly draftId: string;
  readonly after: number;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

function keyOf(personId: string, assignmentId: string): string {
  return `countersign.steps.${personId}.${assignmentId}`;
}

/** Keeps the last steps beside the draft. If the browser will not, only undoing after a reload is lost. */
export function keepSteps(personId: string, { draft, past, future }: DraftHistory): void {
  const kept: KeptSteps = {
    draftId: draft.id,
    after: fingerprint(draft),
    past: past.slice(-MOST_KEPT),
    future: future.slice(-MOST_KEPT),
  };
  writeKept(keyOf(personId, draft.assignmentId), kept);
}

/** The draft with the steps that were kept of it; none where it was changed elsewhere since. */
export function historyOf(personId: string, draft: Draft): DraftHistory {
  const kept = readKept(keyOf(personId, draft.assignmentId), isKeptSteps);
  if (kept === null || kept.draftId !== draft.id || kept.after !== fingerprint(draft)) {
    return beginHistory(draft);
  }
  return { draft, past: kept.past.map(readStep), future: kept.future.map(readStep) };
}

/** Tells one state of a draft from the next (FNV-1a, 32 bits, over its JSON text). */
function fingerprint(draft: Draft): number {
  let hash = 0x811c9dc5;
  const text = JSON.stringify(draft);
  for (let index = 0; index < text.length; index += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  }
  return hash >>> 0;
}

function isKeptSteps(value: unknown): value is KeptSteps {
  return (
    typeof value === 'object' &&
    value !== null &&
    'draftId' in value &&
    'after' in value &&
    'past' in value &&
    Array.isArray(value.past) &&
    'future' in value &&
    Array.isArray(value.future)
  );
}

/** Lines of an earlier version of the app get what is new in lines. */
function readStep(step: Step): Step {
  return { by: null, back: readPatch(step.back), forth: readPatch(step.forth) };
}

function readPatch({ fields, lines }: Patch): Patch {
  return { fields, lines: lines.map((patch) => ({ ...patch, line: asLine(patch.line) })) };
}
