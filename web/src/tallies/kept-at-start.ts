import { readDrafts } from './draft-store.js';
import { keptDatabase } from './kept-database.js';
import { readOwnParts } from './own-part-store.js';
import type { KeptDraft, OutboxItem, OwnPart } from './kept-tables.js';
import { outboxOf } from './outbox.js';

/** All that is kept for one person. */
interface Kept {
  readonly personId: string;
  readonly parts: readonly OwnPart[];
  readonly drafts: readonly KeptDraft[];
  readonly outbox: readonly OutboxItem[];
}

/** For how long the first page waits for it before it is drawn without, ms. */
const PATIENCE = 1000;

let atStart: Kept | null = null;

/**
 * Reads what the phone keeps for a person while the app is still being loaded, so that their first
 * page is drawn once, with all of it. Where the browser keeps nothing or takes its time, the page is
 * drawn without, and shows what is kept when it is there.
 */
export async function readKeptAtStart(personId: string): Promise<void> {
  const patience = new Promise<null>((resolve) => {
    setTimeout(resolve, PATIENCE, null);
  });
  atStart = await Promise.race([readAll(personId).catch(() => null), patience]);
}

async function readAll(personId: string): Promise<Kept> {
  const database = await keptDatabase();
  const [parts, drafts, outbox] = await Promise.all([
    readOwnParts(database, personId),
    readDrafts(database, personId),
    outboxOf(personId),
  ]);
  return { personId, parts, drafts, outbox };
}

/** What was read at the start, for the first drawing of a page only: later it may have changed. */
export function keptAtStart(personId: string): Kept | null {
  return atStart?.personId === personId ? atStart : null;
}

/** To be called once the first page is drawn. */
export function forgetKeptAtStart(): void {
  atStart = null;
}
