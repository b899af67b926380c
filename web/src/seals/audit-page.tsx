import { useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import type { CountAuditQuery } from '../graphql/generated/graphql.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { countOf, dayAndClock } from '../ui/words.js';
import { CountAudit } from './documents.js';

type Trail = CountAuditQuery['count']['auditTrail'];
type Entry = Trail['entries'][number];

const pageSize = 100;

/** Everything that was done to the count, newest first, and whether the chain holds. */
export function AuditPage(props: { readonly countId: string }): ReactNode {
  const [before, setBefore] = useState<number | null>(null);
  const [result, again] = useQuery({
    query: CountAudit,
    variables: { id: props.countId, first: pageSize, before },
    requestPolicy: 'network-only',
  });
  return (
    <Page
      title="Audit trail"
      width="reading"
      intro="Everything that was done to this count, newest first. Nothing is ever taken out."
    >
      <Answer
        result={result}
        skeleton={<Skeleton rows={12} label="Loading the audit trail." />}
        retry={() => again({ requestPolicy: 'network-only' })}
      >
        {({ count }) => (
          <div className="stack">
            <Chain trail={count.auditTrail} />
            <ol className="plain-list audit" reversed>
              {count.auditTrail.entries.map((entry) => (
                <AuditItem key={entry.seq} entry={entry} timeZone={count.timeZone} />
              ))}
            </ol>
            <OlderAndNewer trail={count.auditTrail} before={before} onBefore={setBefore} />
          </div>
        )}
      </Answer>
    </Page>
  );
}

function Chain(props: { readonly trail: Trail }): ReactNode {
  const { trail } = props;
  return trail.intact ? (
    <Notice kind="done" title={`The chain is intact: ${countOf(trail.size, 'entry', 'entries')}.`}>
      <p>
        Each entry carries the hash of the one before, so that nothing can be changed or left out
        unseen.
      </p>
    </Notice>
  ) : (
    <Notice kind="refused" title="The chain is broken.">
      <p>
        An entry does not follow from the one before: something was changed outside this program. Do
        not sign this count; tell whoever runs this server.
      </p>
    </Notice>
  );
}

function AuditItem(props: { readonly entry: Entry; readonly timeZone: string }): ReactNode {
  const { entry } = props;
  return (
    <li>
      <p>
        <span className="soft number audit-seq">{entry.seq}</span>
        {entry.text}
      </p>
      <details className="audit-details">
        <summary>
          <span className="soft small">
            {entry.by?.name ?? 'The program'}, {dayAndClock(entry.at, props.timeZone)}, hash{' '}
            <code>{entry.hash.slice(0, 10)}…</code>
          </span>
        </summary>
        <dl className="facts small">
          <dt>Hash</dt>
          <dd className="hash">{entry.hash}</dd>
          <dt>Before it</dt>
          <dd className="hash">{entry.previous}</dd>
          <dt>Hashed text</dt>
          <dd className="hash">{entry.body}</dd>
        </dl>
      </details>
    </li>
  );
}

function OlderAndNewer(props: {
  readonly trail: Trail;
  readonly before: number | null;
  readonly onBefore: (before: number | null) => void;
}): ReactNode {
  const oldest = props.trail.entries.at(-1)?.seq;
  const hasOlder = oldest !== undefined && oldest > 1 && props.trail.entries.length === pageSize;
  return (
    <div className="row">
      {props.before === null ? null : (
        <button type="button" className="button" onClick={() => props.onBefore(null)}>
          Newest
        </button>
      )}
      {hasOlder ? (
        <button type="button" className="button" onClick={() => props.onBefore(oldest)}>
          Older entries
        </button>
      ) : null}
    </div>
  );
}
