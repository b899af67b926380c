import { useEffect, useSyncExternalStore, type ReactNode } from 'react';
import { useClient } from 'urql';
import { useAnnounce } from '../ui/announcer.js';
import { useOnline } from '../ui/online.js';
import { countOf } from '../ui/words.js';
import { forgetDraft } from './draft-store.js';
import {
  onOutboxChange,
  outboxItems,
  sendTally,
  takenTally,
  type OutboxItem,
  type Taken,
} from './outbox.js';

/** How often a waiting tally is tried again while the browser believes that it is connected. */
const retryEvery = 20_000;

export function useOutbox(personId: string): readonly OutboxItem[] {
  const items = useSyncExternalStore(onOutboxChange, outboxItems);
  return items.filter((item) => item.personId === personId);
}

/** What the server said of a tally that was sent while the page was open. */
export function useTaken(tallyId: string): Taken | null {
  return useSyncExternalStore(onOutboxChange, () => takenTally(tallyId));
}

/** Sends what was kept as soon as there is a connection; says so when something went. */
export function SendKeptTallies(props: { readonly personId: string }): ReactNode {
  const { personId } = props;
  const client = useClient();
  const online = useOnline();
  const announce = useAnnounce();
  const waiting = useOutbox(personId).filter((item) => item.refusal === null).length;
  useEffect(() => {
    if (!online || waiting === 0) return undefined;
    async function sendAll(): Promise<void> {
      for (const item of outboxItems()) {
        if (item.personId !== personId || item.refusal !== null) continue;
        const sent = await sendTally(client, item);
        if (sent.outcome === 'taken') {
          forgetDraft(personId, item.assignmentId);
          announce(`Your tally was sent: ${countOf(sent.taken.total, 'bird')}.`);
        }
      }
    }
    // A tally that was handed over just now is being sent by its page; give that a moment.
    const first = setTimeout(() => void sendAll(), 1500);
    const again = setInterval(() => void sendAll(), retryEvery);
    return () => {
      clearTimeout(first);
      clearInterval(again);
    };
  }, [online, waiting, client, personId, announce]);
  return null;
}
