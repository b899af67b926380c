import { overlaps, type CandidateSet } from '../taxa/candidate-set.js';
import { DABBLERS } from './dabblers.js';
import { EIDERS } from './eiders.js';
import type { FieldMark, FieldMarkKey, MarkState } from './field-mark-key.js';
import { WHITE_CHEEKED_GEESE, WHITE_GEESE } from './geese.js';
import { GOLDENEYES } from './goldeneyes.js';
import { GREBES } from './grebes.js';
import { MERGANSERS } from './mergansers.js';
import { POCHARDS } from './pochards.js';
import { SCOTERS } from './scoters.js';
import { SWANS } from './swans.js';

/** One key for each look-alike group; no species is in two. */
export const FIELD_MARK_KEYS: readonly FieldMarkKey[] = [
  DABBLERS,
  EIDERS,
  GOLDENEYES,
  GREBES,
  MERGANSERS,
  POCHARDS,
  SCOTERS,
  SWANS,
  WHITE_CHEEKED_GEESE,
  WHITE_GEESE,
];

/** The keys that some species of an identification is in: none for a coot, several for "duck sp.". */
export function keysFor(candidates: CandidateSet): readonly FieldMarkKey[] {
  return FIELD_MARK_KEYS.filter(({ species }) => overlaps(candidates, species));
}

/** The mark of a key by its name, letter case and space aside; `null` if it has none of this name. */
export function markNamed(key: FieldMarkKey, name: string): FieldMark | null {
  return key.marks.find((mark) => plain(mark.name) === plain(name)) ?? null;
}

/** The state of a mark by its name, letter case and space aside; `null` if it has none of this name. */
export function stateNamed(mark: FieldMark, name: string): MarkState | null {
  return mark.states.find((state) => plain(state.name) === plain(name)) ?? null;
}

function plain(name: string): string {
  return name.toLowerCase().replace(/\s+/gu, ' ').trim();
}
