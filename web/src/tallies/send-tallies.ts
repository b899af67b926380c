import type { Client } from 'urql';
import type { SubmitTallyMutation } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { SubmitTally } from './documents.js';
import type { OutboxItem, SendState, WaitingFor } from './kept-tables.js';
import { asOnlySender } from './one-sender.js';
import { changeState, outboxOf, releaseSending } from './outbox.js';

/** An answer that takes longer than this is not waited for: the tally is sent again instead. */
const longestAnswer = 45_000;

/** What one round of sending came to: why the rest still waits, or `null` if nothing does. */
export interface Round {
  readonly received: readonly OutboxItem[];
  readonly waitsFor: WaitingFor | null;
}

/**
 * Sends everything of one person that waits, oldest first, in one tab at a time. Sending the same
 * tally again is safe: the server takes the same id with the same content once.
 */
export function sendWaiting(client: Client, personId: string): Promise<Round> {
  return asOnlySender(async () => {
    await releaseSending(personId);
    const received: OutboxItem[] = [];
    const tried = new Set<string>();
    let waitsFor: WaitingFor | null = null;
    for (;;) {
      const waiting = (await outboxOf(personId)).filter(
        ({ id, state }) => state.kind === 'waiting' && !tried.has(id),
      );
      // What was handed over meanwhile goes in the same round.
      if (waiting.length === 0) return { received, waitsFor };
      for (const { id } of waiting) {
        tried.add(id);
        const sent = await sendOne(client, id);
        if (sent?.state.kind === 'received') received.push(sent);
        if (sent?.state.kind !== 'waiting') continue;
        waitsFor = sent.state.because ?? 'connection';
        // What stands in the way of one stands in the way of all, unless the server stumbled over it.
        if (waitsFor !== 'server') return { received, waitsFor };
      }
    }
  });
}

/** @returns the item as it is afterwards; `null` if it was taken back meanwhile */
async function sendOne(client: Client, id: string): Promise<OutboxItem | null> {
  const sending = await changeState(id, 'waiting', { kind: 'sending' });
  if (sending === null) return null;
  return changeState(id, 'sending', await stateAfterSending(client, sending));
}

async function stateAfterSending(client: Client, item: OutboxItem): Promise<SendState> {
  const tooLate = new Promise<null>((resolve) => setTimeout(resolve, longestAnswer, null));
  const input = { ...item.input, observerId: item.personId };
  const answer = await Promise.race([client.mutation(SubmitTally, { input }).toPromise(), tooLate]);
  if (answer === null) return { kind: 'waiting', because: 'connection' };
  if (answer.data) return receivedState(answer.data);
  return answer.error === undefined
    ? { kind: 'waiting', because: 'connection' }
    : stateFor(readTrouble(answer.error));
}

function receivedState({ submitTally }: SubmitTallyMutation): SendState {
  const { submittedAt, total, version } = submitTally;
  return { kind: 'received', at: submittedAt, total, version };
}

function stateFor(trouble: Trouble): SendState {
  if (trouble.kind === 'offline') return { kind: 'waiting', because: 'connection' };
  if (trouble.kind === 'failed') return { kind: 'waiting', because: 'server' };
  const { code, message, faults } = trouble;
  // Signed out is not the tally's fault: it goes when its observer is back.
  if (code === 'NOT_SIGNED_IN') return { kind: 'waiting', because: 'sign-in' };
  return { kind: 'refused', code, message, faults };
}
