import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useMemo, useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import { Link } from 'wouter';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { Skeleton } from '../ui/skeleton.js';
import { ChangedGroups } from './changed-groups.js';
import { clauses } from './clauses.js';
import { inOrderOfWork, isOpen, isSettled, matching, noFilter } from './disagreement-order.js';
import { DisagreementList } from './disagreement-documents.js';
import { FilterBar } from './filter-bar.js';
import { LetStandForm } from './let-stand-form.js';
import { ofReviews, type ListedDisagreement } from './listed-disagreement.js';
import { ReviewFrame } from './review-frame.js';
import { WorkList } from './work-list.js';

/** The compiler's list of work: what the observers disagree on, most birds at stake first. */
export function DisagreementsPage(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({
    query: DisagreementList,
    variables: { id: props.countId },
    context: ofReviews,
  });
  const [filter, setFilter] = useState(noFilter);
  const count = result.data?.count;
  const shown = useMemo(
    () => matching(inOrderOfWork(count?.review.disagreements ?? []), filter),
    [count, filter],
  );
  const askAgain = (): void => again({ requestPolicy: 'network-only' });
  return (
    <Page title={t`Disagreements`} intro={t`Where the tallies differ, most birds at stake first.`}>
      <ReviewFrame
        countId={props.countId}
        act={
          count?.may.includes('RULE') ? (
            <LetStandForm
              countId={count.id}
              disagreements={shown}
              inputHash={count.review.inputHash}
              onDone={askAgain}
            />
          ) : null
        }
      >
        <Answer
          result={result}
          skeleton={<Skeleton rows={14} label={t`Loading the disagreements.`} />}
          retry={askAgain}
        >
          {({ count: { id, review, may, timeZone }, me }) => (
            <>
              {review.disagreements.length === 0 ? (
                <NoDisagreements countId={id} />
              ) : (
                <>
                  <p className="sentence">{openSentence(review.disagreements)}</p>
                  <FilterBar
                    disagreements={review.disagreements}
                    filter={filter}
                    onChange={setFilter}
                  />
                  {shown.length === 0 ? (
                    <Notice kind="plain" title={t`Nothing fits this filter.`}>
                      <p>
                        <button
                          type="button"
                          className="button"
                          onClick={() => setFilter({ ...noFilter, showSettled: true })}
                        >
                          <Trans>Show all</Trans>
                        </button>
                      </p>
                    </Notice>
                  ) : (
                    <WorkList countId={id} disagreements={shown} />
                  )}
                </>
              )}
              <ChangedGroups
                rulings={review.rulings}
                meId={me?.id ?? null}
                maySecond={may.includes('SECOND')}
                mayRule={may.includes('RULE')}
                timeZone={timeZone}
              />
            </>
          )}
        </Answer>
      </ReviewFrame>
    </Page>
  );
}

function NoDisagreements(props: { readonly countId: string }): ReactNode {
  return (
    <Notice kind="plain" title={t`No disagreements.`}>
      <p>
        <Trans>
          Either every section has been counted by one observer only, or all of them agree to the
          bird. The <Link href={pathOf('counts', props.countId, 'coverage')}>coverage</Link> says
          which.
        </Trans>
      </p>
    </Notice>
  );
}

/** How much is left, in one sentence. */
function openSentence(disagreements: readonly ListedDisagreement[]): string {
  const openOnes = disagreements.filter(isOpen);
  const open = openOnes.length;
  const settled = disagreements.filter(isSettled).length;
  const remarks = disagreements.length - open - settled;
  const stake = openOnes.reduce((sum, one) => sum + one.birds, 0);
  const said = [
    open === 0
      ? t`Nothing is open any more`
      : t`${plural(open, { one: '# disagreement is open', other: '# disagreements are open' })}, with ${plural(stake, { one: '# bird', other: '# birds' })} at stake between them`,
  ];
  if (settled > 0) said.push(plural(settled, { one: '# is settled', other: '# are settled' }));
  if (remarks > 0) {
    said.push(
      plural(remarks, { one: '# remark needs no ruling', other: '# remarks need no ruling' }),
    );
  }
  return `${clauses(said)}.`;
}
