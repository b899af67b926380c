// Keeps two programs from doing the same thing at once.
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';

/**
 * Runs something while no other process does so under the same lock. The lock is that of a database
 * file: the operating system gives it back whatever way its holder ends.
 *
 * @template Outcome
 * @param {string} lock a file of its own
 * @param {() => Promise<Outcome>} act
 * @returns {Promise<Outcome>}
 */
export async function oneAtATime(lock, act) {
  const database = new Database(lock, { timeout: 0 });
  const isTaken = () => {
    try {
      database.exec('BEGIN EXCLUSIVE');
      return false;
    } catch (error) {
      if (error instanceof Database.SqliteError && error.code === 'SQLITE_BUSY') return true;
      throw error;
    }
  };
  try {
    while (isTaken()) await wait(100);
    return await act();
  } finally {
    database.close();
  }
}
