import { Dexie, liveQuery } from 'dexie';
import { keptTables, type KeptDatabase } from './kept-tables.js';
import { moveFromLocalStorage } from './move-from-local-storage.js';

let opening: Promise<KeptDatabase> | null = null;
/** What modules hold beside the database; a reload forgets it. */
const memories = new Set<() => void>();

/**
 * The database, opened at the first call. What earlier versions kept in the browser's plain storage
 * is moved into it first.
 *
 * @throws what the browser says where it keeps nothing: storage switched off or full, or a private window
 */
export function keptDatabase(): Promise<KeptDatabase> {
  opening ??= open().catch((error: unknown) => {
    // The next call tries again: a full phone may have room by then.
    opening = null;
    throw error;
  });
  return opening;
}

async function open(): Promise<KeptDatabase> {
  const database = new Dexie('countersign', {
    // As they are now: tests put others in their place.
    indexedDB: globalThis.indexedDB,
    IDBKeyRange: globalThis.IDBKeyRange,
    // What is said to be kept has to outlive an empty battery.
    chromeTransactionDurability: 'strict',
  }) as KeptDatabase;
  database.version(1).stores(keptTables);
  await database.open();
  await moveFromLocalStorage(database);
  return database;
}

/**
 * Tells what is kept now, and again whenever this or another tab changes it.
 *
 * @param onFailure told where the browser keeps nothing
 * @returns to be called to hear no more
 */
export function watchKept<Value>(
  read: (database: KeptDatabase) => Promise<Value>,
  onValue: (value: Value) => void,
  onFailure: () => void,
): () => void {
  let isOver = false;
  let stop = (): void => {
    isOver = true;
  };
  keptDatabase().then(
    (database) => {
      if (isOver) return;
      const watching = liveQuery(() => read(database)).subscribe({
        next: onValue,
        error: onFailure,
      });
      stop = () => watching.unsubscribe();
    },
    () => {
      if (!isOver) onFailure();
    },
  );
  return () => stop();
}

/** Names what a module holds in memory beside the database, and how it is forgotten. */
export function holdsInMemory(forget: () => void): void {
  memories.add(forget);
}

/** Leaves only what the browser keeps, as a reload does. */
export function reopenKept(): void {
  void opening?.then(
    (database) => database.close(),
    () => undefined,
  );
  opening = null;
  for (const forget of memories) forget();
}
