import { plural, t } from '@lingui/core/macro';
import { useEffect, type ReactNode } from 'react';
import { useClient, type Client } from 'urql';
import { makeQuietClient } from '../graphql/client.js';
import { useAnnounce } from '../ui/announcer.js';
import { countedBirds } from '../ui/counted.js';
import { MyAssignments } from './documents.js';
import type { OutboxItem } from './kept-tables.js';
import { startSender } from './sender.js';

/** Sends what was kept as soon as there is a connection; says so when something went. */
export function SendKeptTallies(props: { readonly personId: string }): ReactNode {
  const { personId } = props;
  const client = useClient();
  const announce = useAnnounce();
  useEffect(
    () =>
      startSender(makeQuietClient(), personId, (items) => {
        askAnew(client, items);
        const [only] = items;
        if (items.length === 1 && only?.state.kind === 'received') {
          const birds = countedBirds(only.state.total);
          announce(t`Your tally was sent: ${birds}.`);
        } else
          announce(
            plural(items.length, { one: '# tally was sent.', other: '# tallies were sent.' }),
          );
      }),
    [client, personId, announce],
  );
  return null;
}

/** Once for all that went: pages that are open show what the server has now. */
function askAnew(client: Client, items: readonly OutboxItem[]): void {
  for (const id of new Set(items.map(({ countId }) => countId))) {
    void client.query(MyAssignments, { id }, { requestPolicy: 'network-only' }).toPromise();
  }
}
