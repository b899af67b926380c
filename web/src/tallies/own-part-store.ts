import { asOwnPart } from './as-own-part.js';
import { keptDatabase } from './kept-database.js';
import type { KeptDatabase, OwnPart } from './kept-tables.js';

/**
 * An observer's own part of a count, kept on the phone so that the form opens out of range. Where
 * the browser keeps nothing, the form still works while there is a connection.
 */
export async function keepOwnPart(personId: string, part: OwnPart): Promise<void> {
  try {
    await (await keptDatabase()).ownParts.put({ personId, countId: part.id, part });
  } catch {
    // The draft's own notice says that this browser keeps nothing.
  }
}

/** All parts that are kept for one person. */
export async function readOwnParts(
  database: KeptDatabase,
  personId: string,
): Promise<readonly OwnPart[]> {
  const rows = await database.ownParts.where('personId').equals(personId).toArray();
  return rows.map(({ part }) => asOwnPart(part)).filter((part) => part !== null);
}
