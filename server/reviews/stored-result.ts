import { defaultProtocol } from '../core/model/default-protocol.js';
import type { Protocol } from '../core/model/protocol.js';
import type { Result } from '../core/model/result.js';
import { ENGLISH } from '../core/model/saying.js';
import { wordedResult } from '../core/model/worded-result.js';
import { reconcile } from '../core/reconcile.js';
import type { Source, Transaction } from '../database/source.js';
import { ENGINE_HASH } from './engine-hash.js';
import { memoryOfRun } from './recent-runs.js';
import { inputText, type ReviewInput } from './review-input.js';

/** A reconciliation with the text of its input, which is hashed and sealed. */
export interface Reconciled {
  readonly inputHash: string;
  readonly input: string;
  readonly result: Result;
  /** False if it had to be worked out now and is not in the table of results yet. */
  readonly isStored: boolean;
}

/**
 * The reconciliation of an input: looked up by its hash, otherwise worked out.
 *
 * @throws Refusal as `reconcile` does
 */
export async function reconcileOnce(source: Source, input: ReviewInput): Promise<Reconciled> {
  const { text, hash } = inputText(input);
  const stored = await source.reconciliation.findUnique({
    where: { inputHash_engineHash: { inputHash: hash, engineHash: ENGINE_HASH } },
  });
  const known = { inputHash: hash, input: text };
  if (stored !== null) {
    const result = JSON.parse(stored.result) as Result;
    return { ...known, result, isStored: true };
  }
  const memory = memoryOfRun(input.snapshot.id);
  const protocol = { ...input.protocol, ...settingsAbsentFrom(input.protocol) };
  const result = reconcile(input.snapshot, input.rulings, protocol, memory);
  return { ...known, result, isStored: false };
}

/** The bytes of a result that are sealed, as the command line writes them: in English, keys in their own order. */
export function resultText(result: Result): string {
  return JSON.stringify(wordedResult(result, ENGLISH));
}

/**
 * Usual values of settings that did not exist when a protocol was stored. Its hash stays, and so do the
 * bytes of a result whose protocol lacks none.
 */
function settingsAbsentFrom(protocol: Protocol): Partial<Protocol> {
  const absent = Object.entries(defaultProtocol).filter(([key]) => !(key in protocol));
  return Object.fromEntries(absent);
}

/** The same inside a transaction, which keeps the result at once. */
export async function reconcileAndKeep(
  transaction: Transaction,
  input: ReviewInput,
): Promise<Reconciled> {
  const reconciled = await reconcileOnce(transaction, input);
  if (!reconciled.isStored) await storeResult(transaction, reconciled);
  return reconciled;
}

/**
 * Keeps a result for later look-ups, its sentences as sayings, so that everybody reads it in their own
 * language; not an act of anybody's, so nothing is recorded of it.
 */
export async function storeResult(transaction: Transaction, reconciled: Reconciled): Promise<void> {
  const { inputHash, result } = reconciled;
  const key = { inputHash, engineHash: ENGINE_HASH };
  await transaction.reconciliation.upsert({
    where: { inputHash_engineHash: key },
    create: { ...key, result: JSON.stringify(result), madeAt: new Date().toISOString() },
    update: {},
  });
}
