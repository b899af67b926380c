import type { MyAssignmentsQuery } from '../graphql/generated/graphql.js';
import { readKept, writeKept } from '../ui/kept.js';

/** An observer's own part of a count, kept on the phone so that the form opens out of range. */
type OwnPart = MyAssignmentsQuery['count'];

function keyOf(personId: string, countId: string): string {
  return `countersign.own-part.${personId}.${countId}`;
}

function listKey(personId: string): string {
  return `countersign.own-counts.${personId}`;
}

function isOwnPart(value: unknown): value is OwnPart {
  return (
    typeof value === 'object' &&
    value !== null &&
    'assignments' in value &&
    Array.isArray(value.assignments) &&
    'myTallies' in value &&
    'timeZone' in value
  );
}

function isListOfIds(value: unknown): value is readonly string[] {
  return Array.isArray(value) && value.every((id) => typeof id === 'string');
}

export function keepOwnPart(personId: string, count: OwnPart): void {
  writeKept(keyOf(personId, count.id), count);
  const known = keptCountIds(personId);
  if (!known.includes(count.id)) writeKept(listKey(personId), [...known, count.id]);
}

export function keptOwnPart(personId: string, countId: string): OwnPart | null {
  return readKept(keyOf(personId, countId), isOwnPart);
}

export function keptCountIds(personId: string): readonly string[] {
  return readKept(listKey(personId), isListOfIds) ?? [];
}
