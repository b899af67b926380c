import type { Client } from 'urql';
import { isOnline, onOnlineChange } from '../ui/online.js';
import type { OutboxItem } from './kept-tables.js';
import { watchOutbox } from './outbox.js';
import { sendWaiting } from './send-tallies.js';

const shortestPause = 2_000;
const longestPause = 300_000;

/**
 * How long to wait after so many tries in vain, in milliseconds: twice as long each time, up to five
 * minutes. A quarter more or less by chance keeps phones that lost the network together from asking
 * together.
 *
 * @param chance from 0 to 1
 */
export function pauseAfter(tries: number, chance: number): number {
  const pause = Math.min(longestPause, shortestPause * 2 ** Math.min(tries - 1, 20));
  return pause * (0.75 + chance / 2);
}

/**
 * Sends what waits: at once, when something is handed over, when the browser is back in range, when
 * the page is looked at again, and otherwise after pauses that grow until something has gone.
 *
 * @param onReceived told of what the server took
 * @returns to be called to stop
 */
export function startSender(
  client: Client,
  personId: string,
  onReceived: (items: readonly OutboxItem[]) => void,
): () => void {
  let isOver = false;
  let isSending = false;
  let isAskedAgain = false;
  let tries = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let fresh = '';

  async function send(): Promise<void> {
    clearTimeout(timer);
    if (isSending) {
      isAskedAgain = true;
      return;
    }
    isSending = true;
    const round = await sendWaiting(client, personId);
    isSending = false;
    if (round.received.length > 0) onReceived(round.received);
    if (isOver) return;
    // Whatever went shows that the network works, at least now and then.
    if (round.waitsFor === null || round.received.length > 0) tries = 0;
    if (round.waitsFor !== null) tries += 1;
    if (isAskedAgain) {
      isAskedAgain = false;
      void send();
    } else if (round.waitsFor !== null) {
      timer = setTimeout(() => void send(), pauseAfter(tries, Math.random()));
    }
  }

  function sendNow(): void {
    tries = 0;
    void send();
  }

  function onLook(): void {
    if (document.visibilityState === 'visible') sendNow();
  }

  const stopWatching = watchOutbox(personId, (items) => {
    // Only what was not tried yet is news; the rest waits for its pause to end.
    const untried = items
      .filter(({ state }) => state.kind === 'waiting' && state.because === null)
      .map(({ id }) => id)
      .join();
    const isNews = untried !== '' && untried !== fresh;
    fresh = untried;
    if (isNews) sendNow();
  });
  let wasOnline = isOnline();
  const stopListening = onOnlineChange(() => {
    const isBack = isOnline() && !wasOnline;
    wasOnline = isOnline();
    if (isBack) sendNow();
  });
  document.addEventListener('visibilitychange', onLook);
  sendNow();
  return () => {
    isOver = true;
    clearTimeout(timer);
    stopWatching();
    stopListening();
    document.removeEventListener('visibilitychange', onLook);
  };
}
