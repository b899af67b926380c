import type { Client } from 'urql';
import type { Fault } from '../../../server/core/model/fault.js';
import type { TallyInput } from '../graphql/generated/graphql.js';
import { readTrouble } from '../graphql/trouble.js';
import { readKept, writeKept } from '../ui/kept.js';
import { SubmitTally } from './documents.js';

/** A tally that was handed over to be sent, and what became of it so far. */
export interface OutboxItem {
  readonly personId: string;
  readonly assignmentId: string;
  readonly input: TallyInput;
  /** When it was handed over, milliseconds. */
  readonly since: number;
  /** Why the server would not take it; `null` while it was not reached. */
  readonly refusal: {
    readonly code: string;
    readonly message: string;
    readonly faults: readonly Fault[];
  } | null;
}

const key = 'countersign.outbox';

function isOutbox(value: unknown): value is readonly OutboxItem[] {
  return (
    Array.isArray(value) &&
    value.every(
      (item: unknown) =>
        typeof item === 'object' &&
        item !== null &&
        'personId' in item &&
        'input' in item &&
        'assignmentId' in item,
    )
  );
}

/** What the server said when it took a tally. */
export interface Taken {
  readonly total: number;
  readonly version: number;
}

let items: readonly OutboxItem[] | null = null;
/** Tallies taken since the page was opened, by id: their pages say so whoever sent them. */
const taken = new Map<string, Taken>();
const listeners = new Set<() => void>();

/** What waits, oldest first. The same array until something changes. */
export function outboxItems(): readonly OutboxItem[] {
  items ??= readKept(key, isOutbox) ?? [];
  return items;
}

export function onOutboxChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function store(next: readonly OutboxItem[]): boolean {
  items = next;
  const kept = writeKept(key, next);
  for (const listener of listeners) listener();
  return kept;
}

export function takenTally(tallyId: string): Taken | null {
  return taken.get(tallyId) ?? null;
}

/** Reads the kept outbox again, as after a reload. */
export function reloadOutbox(): void {
  items = null;
  taken.clear();
  for (const listener of listeners) listener();
}

/** Hands a tally over; one for the same assignment that was not taken is replaced by it. */
export function putInOutbox(item: Omit<OutboxItem, 'refusal'>): boolean {
  const others = outboxItems().filter(
    (one) => one.personId !== item.personId || one.assignmentId !== item.assignmentId,
  );
  return store([...others, { ...item, refusal: null }]);
}

/** Takes a tally back to change it. */
export function takeFromOutbox(tallyId: string): void {
  store(outboxItems().filter((item) => item.input.id !== tallyId));
}

export type Sent =
  | { readonly outcome: 'taken'; readonly taken: Taken }
  | { readonly outcome: 'kept' }
  | { readonly outcome: 'refused'; readonly refusal: NonNullable<OutboxItem['refusal']> };

/** Ids being sent now: two tabs of one page must not race, and a second tap must not send twice. */
const beingSent = new Set<string>();

/**
 * Sends one tally. Out of range it stays; a refusal stays with its reasons until it is mended.
 * Sending again is safe: the server takes the same id with the same content once.
 */
export async function sendTally(client: Client, item: OutboxItem): Promise<Sent> {
  const id = String(item.input.id);
  if (beingSent.has(id)) return { outcome: 'kept' };
  beingSent.add(id);
  try {
    const answer = await client.mutation(SubmitTally, { input: item.input }).toPromise();
    if (answer.data) {
      const { total, version } = answer.data.submitTally;
      taken.set(id, { total, version });
      takeFromOutbox(id);
      return { outcome: 'taken', taken: { total, version } };
    }
    const trouble = answer.error === undefined ? null : readTrouble(answer.error);
    if (trouble?.kind !== 'refused') return { outcome: 'kept' };
    const refusal = { code: trouble.code, message: trouble.message, faults: trouble.faults };
    // Signed out is not the tally's fault: it stays as it is and goes when its observer is back.
    if (trouble.code !== 'NOT_SIGNED_IN') {
      store(outboxItems().map((one) => (one.input.id === id ? { ...one, refusal } : one)));
    }
    return { outcome: 'refused', refusal };
  } finally {
    beingSent.delete(id);
  }
}
