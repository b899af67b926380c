import { useEffect, type ReactNode } from 'react';
import { useClient } from 'urql';
import { MyCounts } from '../plans/documents.js';
import { useOnline } from '../ui/online.js';
import { MyAssignments } from './documents.js';
import { keepOwnPart } from './own-part-store.js';

/**
 * Fetches everything that an observer needs at the shore, whichever page is opened first: one visit
 * is enough.
 */
export function KeepOwnParts(props: { readonly personId: string }): ReactNode {
  const { personId } = props;
  const client = useClient();
  const online = useOnline();
  useEffect(() => {
    if (!online) return undefined;
    let isOver = false;
    async function keepAll(): Promise<void> {
      const counts = await client.query(MyCounts, {}, { requestPolicy: 'cache-first' }).toPromise();
      for (const { id, state, myRoles } of counts.data?.counts ?? []) {
        if (isOver) return;
        if (state !== 'OPEN' || !myRoles.includes('OBSERVER')) continue;
        const own = await client
          .query(MyAssignments, { id }, { requestPolicy: 'cache-first' })
          .toPromise();
        if (own.data?.me?.id === personId) await keepOwnPart(personId, own.data.count);
      }
    }
    void keepAll();
    return () => {
      isOver = true;
    };
  }, [client, online, personId]);
  return null;
}
