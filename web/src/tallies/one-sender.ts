import { v7 } from 'uuid';
import { keptDatabase } from './kept-database.js';

/** The lock's name, and the lease's. */
const name = 'countersign.sender';
/** How long a lease holds without being renewed: a closed tab keeps nobody waiting longer. */
const leaseLasts = 15_000;
const renewEvery = 5_000;
const askAgainEvery = 250;

/**
 * Does a piece of work in one tab at a time: the others wait for their turn. The browser's own locks
 * end with their tab; where there are none, a lease in the database does the same, less promptly.
 */
export async function asOnlySender<Value>(work: () => Promise<Value>): Promise<Value> {
  const locks = lockManager();
  if (locks !== null) return locks.request(name, work);
  const holder = v7();
  for (;;) {
    const turn = await takeLease(holder);
    // Where the browser keeps nothing, tabs share nothing that could be sent twice.
    if (turn !== 'taken-by-another') break;
    await new Promise((resolve) => setTimeout(resolve, askAgainEvery));
  }
  const renewing = setInterval(() => void takeLease(holder), renewEvery);
  try {
    return await work();
  } finally {
    clearInterval(renewing);
    await giveLeaseBack(holder);
  }
}

/** Browsers have had locks since 2022, on secure pages only. */
function lockManager(): LockManager | null {
  const { locks } = navigator as { readonly locks?: LockManager };
  return locks ?? null;
}

async function takeLease(holder: string): Promise<'ours' | 'taken-by-another' | 'not-kept'> {
  try {
    const database = await keptDatabase();
    return await database.transaction('rw', database.leases, async () => {
      const now = Date.now();
      const lease = await database.leases.get(name);
      if (lease !== undefined && lease.holder !== holder && lease.until > now) {
        return 'taken-by-another';
      }
      await database.leases.put({ name, holder, until: now + leaseLasts });
      return 'ours';
    });
  } catch {
    return 'not-kept';
  }
}

async function giveLeaseBack(holder: string): Promise<void> {
  try {
    const database = await keptDatabase();
    await database.transaction('rw', database.leases, async () => {
      const lease = await database.leases.get(name);
      if (lease?.holder === holder) await database.leases.delete(name);
    });
  } catch {
    // It runs out by itself.
  }
}
