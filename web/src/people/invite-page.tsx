import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
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
  const name = person?.name;

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
      title={t`You are invited to count`}
      width="entry"
      intro={t`This link signs you in on this phone. It is yours alone: please do not pass it on.`}
    >
      <div className="stack">
        {trouble === null ? null : <TroubleNotice trouble={trouble} />}
        {trouble?.kind === 'refused' ? (
          <Notice kind="plain">
            <p>
              <Trans>
                Ask the leader of the count for a new invite link. Nothing that you entered is lost.
              </Trans>
            </p>
          </Notice>
        ) : null}
        {name === undefined ? null : (
          <p>
            <Trans>
              {name} is signed in on this phone now; opening the invite signs {name} out.
            </Trans>
          </p>
        )}
        <button
          type="button"
          className="button"
          data-kind="main"
          disabled={fetching}
          onClick={() => void open()}
        >
          {fetching ? t`Signing in …` : t`Open my assignments`}
        </button>
      </div>
    </Page>
  );
}
