import { holdsInMemory, keptDatabase, watchKept } from './kept-database.js';
import type { KeptDatabase, OutboxItem } from './kept-tables.js';

/**
 * What the browser would not keep, by the tally's id; it stands over what the database has. It lives
 * as long as the page, so a full phone can still send.
 */
const unkept = new Map<string, OutboxItem>();
const listeners = new Set<() => void>();
holdsInMemory(() => {
  unkept.clear();
  tellListeners();
});

function tellListeners(): void {
  for (const listener of listeners) listener();
}

function holdUnkept(item: OutboxItem): void {
  unkept.set(item.id, item);
  tellListeners();
}

function readOutbox(database: KeptDatabase, personId: string): Promise<readonly OutboxItem[]> {
  return database.outbox.where('personId').equals(personId).toArray();
}

/** Oldest first. */
function withUnkept(personId: string, kept: readonly OutboxItem[]): readonly OutboxItem[] {
  const own = [...unkept.values()].filter((item) => item.personId === personId);
  const items = [...kept.filter(({ id }) => !unkept.has(id)), ...own];
  return items.sort((one, other) => one.since - other.since || (one.id < other.id ? -1 : 1));
}

/** Everything that a person handed over, oldest first, also where the browser keeps nothing. */
export async function outboxOf(personId: string): Promise<readonly OutboxItem[]> {
  try {
    return withUnkept(personId, await readOutbox(await keptDatabase(), personId));
  } catch {
    return withUnkept(personId, []);
  }
}

/** Whether an item lives only as long as the page, since the browser would not keep it. */
export function isOnlyInMemory(id: string): boolean {
  return unkept.has(id);
}

/** Tells a person's outbox now and at every change, from whichever tab. */
export function watchOutbox(
  personId: string,
  onItems: (items: readonly OutboxItem[]) => void,
): () => void {
  let kept: readonly OutboxItem[] = [];
  const tell = (): void => onItems(withUnkept(personId, kept));
  listeners.add(tell);
  const stop = watchKept(
    (database) => readOutbox(database, personId),
    (items) => {
      kept = items;
      tell();
    },
    tell,
  );
  return () => {
    listeners.delete(tell);
    stop();
  };
}

/**
 * Hands a tally over to be sent. One of the same person for the same assignment that the server has
 * not taken gives way to it.
 *
 * @returns false if the browser would not keep it: it is sent from this page or not at all
 */
export async function putInOutbox(item: Omit<OutboxItem, 'state'>): Promise<boolean> {
  const waiting: OutboxItem = { ...item, state: { kind: 'waiting', because: null } };
  try {
    const database = await keptDatabase();
    await database.transaction('rw', database.outbox, async () => {
      const own = await readOutbox(database, item.personId);
      const given = own.filter(
        (one) => one.assignmentId === item.assignmentId && one.state.kind !== 'received',
      );
      await database.outbox.bulkDelete(given.map(({ id }) => id));
      await database.outbox.put(waiting);
    });
    unkept.delete(item.id);
    return true;
  } catch {
    holdUnkept(waiting);
    return false;
  }
}

/**
 * Takes a tally back to change it, unless it is on its way just now or has arrived.
 *
 * @returns whether it was taken back
 */
export async function takeFromOutbox(id: string): Promise<boolean> {
  const held = unkept.get(id);
  if (held !== undefined) {
    if (!isResting(held)) return false;
    unkept.delete(id);
    tellListeners();
  }
  try {
    const database = await keptDatabase();
    return await database.transaction('rw', database.outbox, async () => {
      const item = await database.outbox.get(id);
      if (item !== undefined && !isResting(item)) return false;
      await database.outbox.delete(id);
      return true;
    });
  } catch {
    return held !== undefined;
  }
}

function isResting(item: OutboxItem): boolean {
  return item.state.kind === 'waiting' || item.state.kind === 'refused';
}

/**
 * Changes the state of an item, if it is still there and in a state that the change is for. A
 * received tally's draft has done its work: it goes in the same step, unless it was changed since.
 *
 * @returns the item as it is now, or `null` if it was not changed
 */
export async function changeState(
  id: string,
  from: OutboxItem['state']['kind'],
  state: OutboxItem['state'],
): Promise<OutboxItem | null> {
  const held = unkept.get(id);
  let known = held;
  try {
    const database = await keptDatabase();
    const changed = await database.transaction('rw', database.outbox, database.drafts, async () => {
      const item = held ?? (await database.outbox.get(id));
      if (item?.state.kind !== from) return null;
      known = item;
      const next = { ...item, state };
      await database.outbox.put(next);
      if (state.kind === 'received') {
        const key: [string, string] = [item.personId, item.assignmentId];
        const kept = await database.drafts.get(key);
        const isAsSent = item.edit === null || kept?.edit === item.edit;
        if (kept?.draft.id === id && isAsSent && kept.rivals.length === 0) {
          await database.drafts.delete(key);
        }
      }
      return next;
    });
    // What was held in memory is in the database now.
    if (held !== undefined && changed !== null && unkept.delete(id)) tellListeners();
    return changed;
  } catch {
    if (known?.state.kind !== from) return null;
    const next = { ...known, state };
    holdUnkept(next);
    return next;
  }
}

/** Items that a tab was sending when it was closed: nobody is sending them now. */
export async function releaseSending(personId: string): Promise<void> {
  for (const item of await outboxOf(personId)) {
    if (item.state.kind === 'sending') {
      await changeState(item.id, 'sending', { kind: 'waiting', because: 'connection' });
    }
  }
}
