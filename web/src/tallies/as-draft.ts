import { ACTIVITIES, METHODS, TOTAL_METHODS } from '../../../server/core/model/snapshot.js';
import { emptyDraft, emptyLine, noConditions, type Draft, type DraftLine } from './draft.js';
import { asRaft } from './raft-draft.js';

/**
 * Reads a kept draft of this version of the app or an earlier one. A field that is not there, or is
 * not what it should be, gets what a new draft has there; so a field added to `emptyDraft` or
 * `emptyLine` needs nothing here. `null` if it is no draft at all.
 */
export function asDraft(value: unknown): Draft | null {
  if (!isRecord(value)) return null;
  const { id, assignmentId, countId, lines } = value;
  if (typeof id !== 'string' || typeof assignmentId !== 'string' || typeof countId !== 'string') {
    return null;
  }
  if (!Array.isArray(lines)) return null;
  const draft = filled(value, emptyDraft(countId, assignmentId));
  return {
    ...draft,
    id,
    scope: oneOf(['all-waterbirds', 'waterfowl', 'taxa'], draft.scope),
    scopeTaxa: draft.scopeTaxa.filter((taxon) => typeof taxon === 'string'),
    party: draft.party.filter((person) => typeof person === 'string'),
    seenArea: draft.seenArea.filter(isPosition),
    conditions: filled(value['conditions'], noConditions),
    replaces: typeof value['replaces'] === 'string' ? value['replaces'] : null,
    lines: lines.flatMap((line: unknown) => asLine(line) ?? []),
    rafts: draft.rafts.flatMap((raft: unknown) => asRaft(raft) ?? []),
  };
}

/** Made once: an id of its own for each line that has one already would cost more than the rest. */
const standardLine = emptyLine('');

/** One kept line, with what is new since; `null` if it is none. */
export function asLine(value: unknown): DraftLine | null {
  if (!isRecord(value)) return null;
  const { id, taxon } = value;
  if (typeof id !== 'string' || typeof taxon !== 'string') return null;
  const line = { ...filled(value, standardLine), id, taxon };
  return {
    ...line,
    quantity: oneOf(['number', 'range', 'present'], line.quantity),
    method: oneOf(METHODS, line.method),
    totalMethod: oneOf(['', ...TOTAL_METHODS], line.totalMethod),
    activity: oneOf(ACTIVITIES, line.activity),
    certainty: oneOf(['sure', 'likely'], line.certainty),
    marks: line.marks.filter(isMark),
  };
}

/** `standard` with whatever `value` has of the same kind in its place. */
function filled<T extends object>(value: unknown, standard: T): T {
  if (!isRecord(value)) return standard;
  const entries = Object.entries(standard).map(([key, usual]: [string, unknown]) => {
    const kept = value[key];
    return [key, kindOf(kept) === kindOf(usual) ? kept : usual];
  });
  return Object.fromEntries(entries) as T;
}

function kindOf(value: unknown): string {
  return Array.isArray(value) ? 'list' : value === null ? 'null' : typeof value;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return kindOf(value) === 'object';
}

function isMark(value: unknown): boolean {
  return isRecord(value) && typeof value['mark'] === 'string' && typeof value['state'] === 'string';
}

function isPosition(value: unknown): boolean {
  return Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);
}

/** The word if it is one of those known, else the first of them. */
function oneOf<Word extends string>(words: readonly [Word, ...Word[]], word: Word): Word {
  return words.includes(word) ? word : words[0];
}
