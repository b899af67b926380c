import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { Notice } from '../ui/notice.js';
import { pathOf } from '../ui/path.js';
import { countOf } from '../ui/words.js';
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
      <h2 id="tallies-on-phone">On this phone</h2>
      <p className="soft">
        {waiting === 0
          ? 'Everything that this phone has was received.'
          : `${countOf(waiting, 'tally', 'tallies')} not received yet.`}
      </p>
      <ul className="plain-list phone-tallies">
        {tallies.map((tally) => (
          <PhoneTallyItem key={tally.key} tally={tally} />
        ))}
      </ul>
      {isPromised === false && waiting > 0 ? (
        <Notice kind="plain">
          <p>
            This browser may clear what it keeps if the phone runs out of room. Send what waits when
            you are in range, and leave some room on the phone.
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
