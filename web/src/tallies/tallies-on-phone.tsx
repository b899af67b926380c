import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Notice } from '../ui/notice.js';
import { pathOf } from '../ui/path.js';
import type { KeptDraft, OutboxItem, OwnPart } from './kept-tables.js';
import { usePersistence } from './persistent-storage.js';
import { talliesOnPhone, type PhoneTally } from './phone-tallies.js';

/** Every tally that this phone keeps of one observer, each with what has become of it. */
export function TalliesOnPhone(props: {
  readonly drafts: readonly KeptDraft[];
  readonly outbox: readonly OutboxItem[];
  readonly parts: readonly OwnPart[];
}): ReactNode {
  const tallies = talliesOnPhone(props.drafts, props.outbox, props.parts);
  const isPromised = usePersistence();
  const waiting = tallies.filter(({ isReceived }) => !isReceived).length;
  if (tallies.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby="tallies-on-phone">
      <h2 id="tallies-on-phone">
        <Trans>On this phone</Trans>
      </h2>
      <p className="soft">
        {waiting === 0
          ? t`Everything that this phone has was received.`
          : plural(waiting, {
              one: '# tally not received yet.',
              other: '# tallies not received yet.',
            })}
      </p>
      <ul className="plain-list phone-tallies">
        {tallies.map((tally) => (
          <PhoneTallyItem key={tally.key} tally={tally} />
        ))}
      </ul>
      {isPromised === false && waiting > 0 ? (
        <Notice kind="plain">
          <p>
            <Trans>
              This browser may clear what it keeps if the phone runs out of room. Send what waits
              when you are in range, and leave some room on the phone.
            </Trans>
          </p>
        </Notice>
      ) : null}
    </section>
  );
}

function PhoneTallyItem(props: { readonly tally: PhoneTally }): ReactNode {
  const { tally } = props;
  return (
    <li className="phone-tally" data-state={tally.kind}>
      <span className="phone-tally-mark" aria-hidden="true">
        {marks[tally.kind]}
      </span>
      <span>
        <Link href={pathOf('counts', tally.countId, 'assignments', tally.assignmentId)}>
          {tally.place}
        </Link>
        <span className="soft small">{tally.content}</span>
        <span>{tally.state}</span>
      </span>
    </li>
  );
}

/** The state's sign; its words stand beside it. */
const marks: Readonly<Record<PhoneTally['kind'], string>> = {
  draft: '✎',
  waiting: '…',
  sending: '↑',
  received: '✓',
  refused: '!',
};
