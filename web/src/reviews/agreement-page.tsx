import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import { useQuery } from 'urql';
import { CountHead } from '../plans/documents.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { CountAgreement, OwnAgreement } from './agreement-documents.js';
import { AgreementView } from './agreement-view.js';
import { ofReviews } from './listed-disagreement.js';
import { OwnAgreementView } from './own-agreement.js';
import { ReviewFrame } from './review-frame.js';

/**
 * How well the observers agree. Compilers and leaders see the whole; an observer sees how they
 * themselves agree with those who counted the same.
 */
export function AgreementPage(props: { readonly countId: string }): ReactNode {
  const { countId } = props;
  const [head, again] = useQuery({ query: CountHead, variables: { id: countId } });
  const count = head.data?.count;
  const isReviewer = count?.may.includes('REVIEW') ?? false;
  const isObserver = count?.myRoles.every((role) => role === 'OBSERVER') ?? false;
  return (
    <Page
      title={t`Agreement`}
      intro={
        isObserver
          ? t`How you agree with those who counted the same birds independently of you, before any ruling. Pairs that you are not one of are not shown. Numbers in brackets are 95 % intervals.`
          : t`How well independent observers agree, before any ruling. Numbers in brackets are 95 % intervals.`
      }
    >
      <Answer
        result={head}
        skeleton={<LoadingAgreement />}
        retry={() => again({ requestPolicy: 'network-only' })}
      >
        {({ count: { myRoles } }) =>
          isObserver ? (
            <OwnPart countId={countId} />
          ) : isReviewer ? (
            <ReviewFrame countId={countId}>
              <WholePart countId={countId} isLeader={myRoles.includes('LEADER')} />
            </ReviewFrame>
          ) : (
            // Refused, and the server says why.
            <WholePart countId={countId} isLeader={false} />
          )
        }
      </Answer>
    </Page>
  );
}

function WholePart(props: { readonly countId: string; readonly isLeader: boolean }): ReactNode {
  const [result, again] = useQuery({
    query: CountAgreement,
    variables: { id: props.countId },
    context: ofReviews,
  });
  return (
    <Answer
      result={result}
      skeleton={<LoadingAgreement />}
      retry={() => again({ requestPolicy: 'network-only' })}
    >
      {({ count: { review } }) => (
        <div className="stack">
          {review.withheld.length === 0 ? null : (
            <Notice kind="caution" title={t`Not all of it is shown to you yet.`}>
              {review.withheld.map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </Notice>
          )}
          <AgreementView agreement={review.agreement} isLeader={props.isLeader} />
        </div>
      )}
    </Answer>
  );
}

function OwnPart(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({
    query: OwnAgreement,
    variables: { id: props.countId },
    context: ofReviews,
  });
  return (
    <Answer
      result={result}
      skeleton={<LoadingAgreement />}
      retry={() => again({ requestPolicy: 'network-only' })}
    >
      {({ count }) => (
        <div className="stack">
          <OwnAgreementView own={count.ownAgreement} />
        </div>
      )}
    </Answer>
  );
}

function LoadingAgreement(): ReactNode {
  return <Skeleton rows={14} label={t`Loading the agreement.`} />;
}
