import { canonicalJson, sha256 } from '../seals/canonical.js';
import type { AuditEntry } from './generated/client.js';
import type { Transaction } from './source.js';

/** A stored entry: its body, and the columns that say the same. */
export type { AuditEntry };

/** Everything that is recorded. A count's acts stand in its own chain, sign-in in the people's. */
export type AuditAct =
  | 'count.plan'
  | 'count.import'
  | 'assignment.make'
  | 'assignment.remove'
  | 'window.close'
  | 'tally.submit'
  | 'tally.correct'
  | 'ruling.give'
  | 'ruling.second'
  | 'ruling.withdraw'
  | 'query.ask'
  | 'query.answer'
  | 'count.sign-off'
  | 'count.seal'
  | 'person.add'
  | 'person.password'
  | 'invite.make'
  | 'session.open'
  | 'session.close'
  | 'demo.load'
  | 'demo.sign-ins';

/**
 * What an act was about: ids and content hashes. No numbers of birds and no free text, so that the
 * trail can be read by people who may not see the tallies yet.
 */
export type AuditDetails = Readonly<Record<string, string | number | readonly string[] | null>>;

export interface NewEntry {
  readonly chain: string;
  /** Person id; null for what the server's own command line did. */
  readonly by: string | null;
  readonly act: AuditAct;
  readonly details: AuditDetails;
}

/** The chain of everything about signing in. */
export const PEOPLE_CHAIN = 'people';

/** The chain of one count; the prefix keeps a count named "people" out of the people's. */
export function countChain(countId: string): string {
  return `count/${countId}`;
}

/** What the first entry of a chain names as the one before it. */
const NO_ENTRY = '0'.repeat(64);

/** What is hashed: the whole entry as canonical JSON (RFC 8785), the hash of the one before included. */
export interface EntryBody {
  readonly chain: string;
  readonly seq: number;
  readonly at: string;
  readonly by: string | null;
  readonly act: string;
  readonly details: AuditDetails;
  readonly previous: string;
}

/** Stores entries at the ends of their chains, in the transaction of the act itself. */
export async function appendEntries(
  transaction: Transaction,
  entries: readonly NewEntry[],
): Promise<void> {
  for (const { chain, by, act, details } of entries) {
    const last = await transaction.auditEntry.findFirst({
      where: { chain },
      orderBy: { seq: 'desc' },
    });
    const at = new Date().toISOString();
    const seq = (last?.seq ?? 0) + 1;
    const previous = last?.hash ?? NO_ENTRY;
    const entry: EntryBody = { chain, seq, at, by, act, details, previous };
    const body = canonicalJson(entry);
    await transaction.auditEntry.create({
      data: { chain, seq, at, byId: by, act, body, previous, hash: sha256(body) },
    });
  }
}

/**
 * Checks a whole chain: numbered from 1 without a gap, every hash that of its body, every body naming
 * the hash before it, every column what the body says.
 *
 * @param entries all entries of one chain, by seq
 * @returns the seq of the first entry that does not follow, or null if the chain is intact
 */
export function firstBrokenEntry(entries: readonly AuditEntry[]): number | null {
  let previous = NO_ENTRY;
  for (const [index, entry] of entries.entries()) {
    const { chain, seq, at, byId: by, act } = entry;
    const body = JSON.parse(entry.body) as EntryBody;
    const expected = canonicalJson({ chain, seq, at, by, act, details: body.details, previous });
    const follows =
      seq === index + 1 &&
      entry.previous === previous &&
      entry.body === expected &&
      entry.hash === sha256(entry.body);
    if (!follows) return index + 1;
    previous = entry.hash;
  }
  return null;
}
