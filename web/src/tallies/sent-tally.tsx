import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Notice } from '../ui/notice.js';
import { clock, countOf } from '../ui/words.js';
import type { OutboxItem, SendState } from './kept-tables.js';
import { isOnlyInMemory } from './outbox.js';

type Received = Extract<SendState, { readonly kind: 'received' }>;

/** A tally that the server took. */
export function ReceivedTally(props: {
  readonly received: Received;
  readonly timeZone: string;
  readonly back: string;
}): ReactNode {
  const { received } = props;
  return (
    <Notice kind="done" title={`Sent: ${countOf(received.total, 'bird')}. Thank you.`}>
      <p>
        Received at {clock(received.at, props.timeZone)}. The tally is with the compilers now
        {received.version > 1 ? `, as version ${received.version}` : ''}. If they have a question,
        it appears under My assignments.
      </p>
      <p>
        <Link href={props.back} className="button" data-kind="main">
          Back to my assignments
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
      <Notice kind="plain" title="Sending the tally …">
        <p>It is kept on this phone until the server has it.</p>
      </Notice>
    );
  }
  if (isOnlyInMemory(item.id)) {
    return (
      <Notice kind="offline" title="Not yet sent, and this phone does not keep it.">
        <p>
          Its storage is full or switched off. Leave this page open until there is a connection: the
          tally goes by itself then. Note the numbers on paper too.
        </p>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </Notice>
    );
  }
  if (state.because === 'sign-in') {
    return (
      <Notice kind="refused" title="You are signed out.">
        <p>
          Open your invite link again, or <Link href="/sign-in">sign in</Link>. The tally is kept on
          this phone and goes then.
        </p>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </Notice>
    );
  }
  return (
    <Notice kind="offline" title="Kept on this phone, not yet sent.">
      <p>
        {state.because === 'server' ? 'The server could not take it just now. ' : ''}
        The tally goes by itself when there is a connection and this page, or any page of the count,
        is open. It cannot be counted twice.
      </p>
      <p className="row">
        <Link href={props.back} className="button" data-kind="main">
          Back to my assignments
        </Link>
        <ChangeFirst onChangeIt={props.onChangeIt} />
      </p>
    </Notice>
  );
}

function ChangeFirst(props: { readonly onChangeIt: () => void }): ReactNode {
  return (
    <button type="button" className="button" onClick={props.onChangeIt}>
      Change it first
    </button>
  );
}
