import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { useLocation } from 'wouter';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { AcceptInvite } from './documents.js';
import { useSession } from './session.js';

/**
 * Where an invite link leads. Signing in needs one tap: a messenger that opens links by itself, to
 * show a preview, must not use the invite up.
 */
export function InvitePage(props: { readonly token: string }): ReactNode {
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, accept] = useMutation(AcceptInvite);
  const { person, changed } = useSession();
  const [, navigate] = useLocation();

  async function open(): Promise<void> {
    setTrouble(null);
    const answer = await accept({ token: props.token });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else if (answer.data) {
      changed();
      navigate('/', { replace: true });
    }
  }

  return (
    <Page
      title="You are invited to count"
      width="entry"
      intro="This link signs you in on this phone. It is yours alone: please do not pass it on."
    >
      <div className="stack">
        {trouble === null ? null : <TroubleNotice trouble={trouble} />}
        {trouble?.kind === 'refused' ? (
          <Notice kind="plain">
            <p>
              Ask the leader of the count for a new invite link. Nothing that you entered is lost.
            </p>
          </Notice>
        ) : null}
        {person === null ? null : (
          <p>
            {person.name} is signed in on this phone now; opening the invite signs {person.name}{' '}
            out.
          </p>
        )}
        <button
          type="button"
          className="button"
          data-kind="main"
          disabled={fetching}
          onClick={() => void open()}
        >
          {fetching ? 'Signing in …' : 'Open my assignments'}
        </button>
      </div>
    </Page>
  );
}
