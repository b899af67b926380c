import { t } from '@lingui/core/macro';
import { createContext, useContext, useEffect, useMemo, useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import { readTrouble } from '../graphql/trouble.js';
import { TroubleNotice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { Me } from './documents.js';
import {
  forgetLastPerson,
  keepLastPerson,
  lastPerson,
  type SignedInPerson,
} from './last-person.js';

interface Session {
  /** Who is signed in; null when nobody is. */
  readonly person: SignedInPerson | null;
  /** To call after signing in or out: everything is asked for anew. */
  readonly changed: () => void;
}

const SessionContext = createContext<Session>({ person: null, changed: () => undefined });

/** Finds out who is signed in before any page is shown. `restart` drops all cached answers. */
export function SessionProvider(props: {
  readonly restart: () => void;
  readonly children: ReactNode;
}): ReactNode {
  const { restart } = props;
  const [{ data, error }, askAgain] = useQuery({ query: Me });
  const trouble = useMemo(() => (error === undefined ? null : readTrouble(error)), [error]);
  // Nobody waits at the shore for a network that may not answer: whoever was here last goes on at once,
  // and the server's word takes its place when it comes.
  const [remembered] = useState(lastPerson);
  const person = data === undefined ? remembered : data.me;
  const confirmed = data?.me;
  useEffect(() => {
    if (confirmed === undefined) return;
    if (confirmed === null) forgetLastPerson();
    else keepLastPerson(confirmed);
  }, [confirmed]);
  const session = useMemo<Session>(
    () => ({
      person: person === null ? null : { id: person.id, name: person.name },
      changed: () => {
        // Whoever was here last is no guide to who is here now.
        forgetLastPerson();
        restart();
      },
    }),
    [person, restart],
  );
  if (data === undefined && trouble === null && remembered === null) {
    return (
      <main data-width="reading">
        <Skeleton rows={4} label={t`Opening Countersign.`} />
      </main>
    );
  }
  if (data === undefined && trouble !== null && remembered === null) {
    return (
      <Page title="Countersign" width="reading">
        <TroubleNotice
          trouble={trouble}
          retry={() => askAgain({ requestPolicy: 'network-only' })}
        />
      </Page>
    );
  }
  return <SessionContext value={session}>{props.children}</SessionContext>;
}

export function useSession(): Session {
  return useContext(SessionContext);
}
