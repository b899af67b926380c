import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Notice } from '../ui/notice.js';
import { clock } from '../ui/words.js';
import type { OutboxItem, SendState } from './kept-tables.js';
import { isOnlyInMemory } from './outbox.js';
import { countedBirds } from '../ui/counted.js';

type Received = Extract<SendState, { readonly kind: 'received' }>;

/** A tally that the server took. */
export function ReceivedTally(props: {
  readonly received: Received;
  readonly timeZone: string;
  readonly back: string;
}): ReactNode {
  const { received } = props;
  const birds = countedBirds(received.total);
  const time = clock(received.at, props.timeZone);
  const { version } = received;
  return (
    <Notice kind="done" title={t`Sent: ${birds}. Thank you.`}>
      <p>
        {version > 1 ? (
          <Trans>
            Received at {time}. The tally is with the compilers now, as version {version}. If they
            have a question, it appears under My assignments.
          </Trans>
        ) : (
          <Trans>
            Received at {time}. The tally is with the compilers now. If they have a question, it
            appears under My assignments.
          </Trans>
        )}
      </p>
      <p>
        <Link href={props.back} className="button" data-kind="main">
          <Trans>Back to my assignments</Trans>
        </Link>
      </p>
    </Notice>
  );
}

/** A tally that was handed over and is not received yet. */
export function TallyOnItsWay(props: {
  readonly item: OutboxItem;
  readonly back: string;
  readonly onChangeIt: () => void;
}): ReactNode {
  const { item } = props;
  const { state } = item;
  const isTried = state.kind === 'waiting' && state.because !== null;
  if (!isTried) {
    return (
      <Notice kind="plain" title={t`Sending the tally …`}>
        <p>
          <Trans>It is kept on this phone until the server has it.</Trans>
        </p>
      </Notice>
    );
  }
  if (isOnlyInMemory(item.id)) {
    return (
      <Notice kind="offline" title={t`Not yet sent, and this phone does not keep it.`}>
        <p>
          <Trans>
            Its storage is full or switched off. Leave this page open until there is a connection:
            the tally goes by itself then. Note the numbers on paper too.
          </Trans>
        </p>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </Notice>
    );
  }
  if (state.because === 'sign-in') {
    return (
      <Notice kind="refused" title={t`You are signed out.`}>
        <p>
          <Trans>
            Open your invite link again, or <Link href="/sign-in">sign in</Link>. The tally is kept
            on this phone and goes then.
          </Trans>
        </p>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </Notice>
    );
  }
  return (
    <Notice kind="offline" title={t`Kept on this phone, not yet sent.`}>
      <p>
        {state.because === 'server' ? <Trans>The server could not take it just now.</Trans> : null}{' '}
        <Trans>
          The tally goes by itself when there is a connection and this page, or any page of the
          count, is open. It cannot be counted twice.
        </Trans>
      </p>
      <p className="row">
        <Link href={props.back} className="button" data-kind="main">
          <Trans>Back to my assignments</Trans>
        </Link>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </p>
    </Notice>
  );
}

function ChangeFirst(props: { readonly onChangeIt: () => void }): ReactNode {
  return (
    <button type="button" className="button" onClick={props.onChangeIt}>
      <Trans>Change it first</Trans>
    </button>
  );
}
