import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { appendEntries, type NewEntry } from './audit-log.js';
import { PrismaClient } from './generated/client.js';
import type { Transaction } from './source.js';

/** A write's answer, and the audit entries that are stored with it; none if nothing was written. */
export interface Written<Value> {
  readonly value: Value;
  readonly entries: readonly NewEntry[];
}

/** Long enough for the import of a big folder on a slow machine. */
const TRANSACTION_LIMIT_MS = 60_000;

/**
 * The one way to the database. Reads go through a connection of their own, because the writing one
 * would show them a transaction that is still under way.
 */
@Injectable()
export class Database implements OnApplicationShutdown {
  #reader: PrismaClient | undefined;
  #writer: PrismaClient | undefined;
  #lastWrite: Promise<unknown> = Promise.resolve();

  /** @param url `file:…` of a migrated database. */
  async open(url: string): Promise<void> {
    this.#writer = await connect(url);
    this.#reader = await connect(url);
    await this.#reader.$queryRawUnsafe('PRAGMA query_only = ON');
  }

  /** For reading only; sees what has been committed. */
  get read(): PrismaClient {
    if (this.#reader === undefined) throw new Error('the database is not open');
    return this.#reader;
  }

  /**
   * Runs one act: its rows and its audit entries are stored together or not at all. Writes come one
   * after the other, so what the work reads cannot change before it writes, and the audit chain
   * cannot fork.
   */
  write<Value>(work: (transaction: Transaction) => Promise<Written<Value>>): Promise<Value> {
    const writer = this.#writer;
    if (writer === undefined) throw new Error('the database is not open');
    const run = (): Promise<Value> =>
      writer.$transaction(
        async (transaction) => {
          const { value, entries } = await work(transaction);
          await appendEntries(transaction, entries);
          return value;
        },
        { timeout: TRANSACTION_LIMIT_MS, maxWait: TRANSACTION_LIMIT_MS },
      );
    const result = this.#lastWrite.then(run, run);
    this.#lastWrite = result.catch(() => undefined);
    return result;
  }

  async onApplicationShutdown(): Promise<void> {
    await this.#lastWrite;
    await Promise.all([this.#reader?.$disconnect(), this.#writer?.$disconnect()]);
    this.#reader = undefined;
    this.#writer = undefined;
  }
}

async function connect(url: string): Promise<PrismaClient> {
  const client = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: 5_000 }) });
  // FULL: what was acknowledged survives a power cut, which WAL alone does not promise.
  // recursive_triggers: without it INSERT OR REPLACE would pass by the append-only triggers.
  const settings = [
    'journal_mode = WAL',
    'synchronous = FULL',
    'busy_timeout = 5000',
    'foreign_keys = ON',
    'recursive_triggers = ON',
  ];
  for (const setting of settings) await client.$queryRawUnsafe(`PRAGMA ${setting}`);
  return client;
}
