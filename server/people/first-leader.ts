import { v7 as newId } from 'uuid';
import type { Database } from '../database/database.js';
import { hashPassword } from './password.js';
import { givePassword, peopleEntry, signInNameOf } from './people.service.js';
import { newToken } from './token.js';

/**
 * Gives somebody a new password from the server's own command line: the first leader, who may then
 * plan counts, or anyone who has forgotten theirs.
 *
 * @returns the password, which is stored nowhere
 */
export async function makeFirstLeader(database: Database, name: string): Promise<string> {
  const password = newToken().slice(0, 20);
  const passwordHash = await hashPassword(password);
  await database.write(async (transaction) => {
    const signInName = signInNameOf(name);
    const known = await transaction.person.findUnique({ where: { signInName } });
    const id = known?.id ?? newId();
    if (known === null) {
      const addedAt = new Date().toISOString();
      await transaction.person.create({ data: { id, name: name.trim(), mayPlan: 1, addedAt } });
    }
    await givePassword(transaction, id, passwordHash);
    const added = known === null ? [peopleEntry('person.add', null, { person: id })] : [];
    return {
      value: undefined,
      entries: [...added, peopleEntry('person.password', null, { person: id })],
    };
  });
  return password;
}
