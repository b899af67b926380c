import { useEffect, type ReactNode } from 'react';
import { useClient } from 'urql';
import { useAnnounce } from '../ui/announcer.js';
import { countOf } from '../ui/words.js';
import { startSender } from './sender.js';

/** Sends what was kept as soon as there is a connection; says so when something went. */
export function SendKeptTallies(props: { readonly personId: string }): ReactNode {
  const { personId } = props;
  const client = useClient();
  const announce = useAnnounce();
  useEffect(
    () =>
      startSender(client, personId, (items) => {
        const [only] = items;
        if (items.length === 1 && only?.state.kind === 'received') {
          announce(`Your tally was sent: ${countOf(only.state.total, 'bird')}.`);
        } else announce(`${items.length} tallies were sent.`);
      }),
    [client, personId, announce],
  );
  return null;
}
