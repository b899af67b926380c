import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import type { CountAuditQuery } from '../graphql/generated/graphql.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { dayAndClock } from '../ui/words.js';
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
      title={t`Audit trail`}
      width="reading"
      intro={t`Everything that was done to this count, newest first. Nothing is ever taken out.`}
    >
      <Answer
        result={result}
        skeleton={<Skeleton rows={12} label={t`Loading the audit trail.`} />}
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
  const { intact, size } = props.trail;
  return intact ? (
    <Notice
      kind="done"
      title={t`The chain is intact: ${plural(size, { one: '# entry', other: '# entries' })}.`}
    >
      <p>
        <Trans>
          Each entry carries the hash of the one before, so that nothing can be changed or left out
          unseen.
        </Trans>
      </p>
    </Notice>
  ) : (
    <Notice kind="refused" title={t`The chain is broken.`}>
      <p>
        <Trans>
          An entry does not follow from the one before: something was changed outside this program.
          Do not sign this count; tell whoever runs this server.
        </Trans>
      </p>
    </Notice>
  );
}

function AuditItem(props: { readonly entry: Entry; readonly timeZone: string }): ReactNode {
  const { entry } = props;
  const author = entry.by?.name ?? t`The program`;
  const time = dayAndClock(entry.at, props.timeZone);
  const beginning = entry.hash.slice(0, 10);
  return (
    <li>
      <p>
        <span className="soft number audit-seq">{entry.seq}</span>
        {entry.text}
      </p>
      <details className="audit-details">
        <summary>
          <span className="soft small">
            <Trans>
              {author}, {time}, hash <code>{beginning}…</code>
            </Trans>
          </span>
        </summary>
        <dl className="facts small">
          <dt>
            <Trans>Hash</Trans>
          </dt>
          <dd className="hash">{entry.hash}</dd>
          <dt>
            <Trans>Before it</Trans>
          </dt>
          <dd className="hash">{entry.previous}</dd>
          <dt>
            <Trans>Hashed text</Trans>
          </dt>
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
          <Trans>Newest</Trans>
        </button>
      )}
      {hasOlder ? (
        <button type="button" className="button" onClick={() => props.onBefore(oldest)}>
          <Trans>Older entries</Trans>
        </button>
      ) : null}
    </div>
  );
}
