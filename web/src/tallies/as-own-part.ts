import type { OwnPart } from './kept-tables.js';

/**
 * Reads a kept part of a count, of this version of the app or an earlier one: an update may come the
 * evening before, and the shore has no network to ask again. What an earlier version did not ask
 * for is empty. `null` if it is no part of a count at all.
 */
export function asOwnPart(value: unknown): OwnPart | null {
  if (!isRecord(value)) return null;
  if (typeof value['id'] !== 'string' || typeof value['timeZone'] !== 'string') return null;
  if (!Array.isArray(value['assignments']) || !Array.isArray(value['myTallies'])) return null;
  const part = value as Partial<OwnPart> & OwnPart;
  return {
    ...part,
    sections: listOf(part.sections).map((section) => ({
      ...section,
      polygon: listOf(section.polygon),
    })),
    vantages: listOf(part.vantages),
    shoreline: listOf(part.shoreline),
    expectedTaxa: listOf(part.expectedTaxa),
    people: listOf(part.people),
    queries: listOf(part.queries),
  };
}

function listOf<Value>(value: Value[] | undefined): Value[] {
  return value ?? [];
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
