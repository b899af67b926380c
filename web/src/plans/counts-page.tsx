import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { useQuery } from 'urql';
import { Link, Redirect } from 'wouter';
import { roleName } from '../ui/role-names.js';
import { useSession } from '../people/session.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed, longDate } from '../ui/words.js';
import type { MyCountsQuery } from '../graphql/generated/graphql.js';
import { MyCounts } from './documents.js';
import { stateName } from './state-words.js';
import { useKeptOwnParts } from '../tallies/use-kept.js';
import type { OwnPart } from '../tallies/kept-tables.js';
import { useLate } from '../ui/late.js';

/** The counts one takes part in; with a single one, straight to it. */
export function CountsPage(props: { readonly stay: boolean }): ReactNode {
  const [result, again] = useQuery({ query: MyCounts });
  const { person } = useSession();
  const counts = result.data?.counts;
  const only = counts?.length === 1 ? counts[0] : undefined;
  // Out of range: an observer's own counts are kept on the phone.
  const isLate = useLate(counts === undefined && result.error === undefined);
  const isOutOfRange = result.error?.networkError !== undefined;
  const kept = useKeptOwnParts(person?.id ?? '', counts === undefined && (isOutOfRange || isLate));
  if (only !== undefined && !props.stay) return <Redirect to={pathOf('counts', only.id)} replace />;
  const keptOnly = kept?.length === 1 ? kept[0] : undefined;
  if (keptOnly !== undefined && counts === undefined && isOutOfRange) {
    return <Redirect to={pathOf('counts', keptOnly.id, 'assignments')} replace />;
  }
  if (kept !== null && kept.length > 0 && counts === undefined) return <KeptCounts counts={kept} />;
  return (
    <Page title={t`Your counts`} width="reading">
      <Answer
        result={result}
        skeleton={<Skeleton rows={4} label={t`Loading your counts.`} />}
        retry={() => again({ requestPolicy: 'network-only' })}
      >
        {(data) =>
          data.counts.length === 0 ? (
            <Notice kind="plain" title={t`You take part in no count yet.`}>
              <p>
                <Trans>
                  Observers: ask the leader for your invite link. Leaders:{' '}
                  <Link href="/import">take in a count folder</Link> or{' '}
                  <Link href="/plan">plan a count</Link>.
                </Trans>
              </p>
            </Notice>
          ) : (
            <div className="stack">
              <ul className="plain-list count-list">
                {data.counts.map((count) => (
                  <li key={count.id}>
                    <Link href={pathOf('counts', count.id)}>{count.name}</Link>
                    <span className="soft">{countWords(count)}</span>
                  </li>
                ))}
              </ul>
              {data.counts.some((count) => count.myRoles.includes('LEADER')) ? (
                <p className="row">
                  <Link href="/import" className="button">
                    <Trans>Take in a count folder</Trans>
                  </Link>
                  <Link href="/plan" className="button">
                    <Trans>Plan a count</Trans>
                  </Link>
                </p>
              ) : null}
            </div>
          )
        }
      </Answer>
    </Page>
  );
}

function countWords(count: MyCountsQuery['counts'][number]): string {
  const { waterbody } = count;
  const date = longDate(count.date);
  const state = stateName(count.state);
  const roles = listed(count.myRoles.map(roleName));
  return t`${waterbody}, ${date} · ${state} · you are ${roles}`;
}

/** What an observer has on the phone while the server cannot be reached. */
function KeptCounts(props: { readonly counts: readonly OwnPart[] }): ReactNode {
  return (
    <Page
      title={t`Your counts`}
      width="reading"
      intro={t`No answer from the server yet. These are kept on this phone.`}
    >
      <ul className="plain-list count-list">
        {props.counts.map((count) => (
          <li key={count.id}>
            <Link href={pathOf('counts', count.id, 'assignments')}>{count.name}</Link>
            <span className="soft">
              {count.waterbody}, {longDate(count.date)}
            </span>
          </li>
        ))}
      </ul>
    </Page>
  );
}
