import { t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import { useMemo, type ReactNode } from 'react';
import { useQuery } from 'urql';
import { Link, useLocation } from 'wouter';

import type { OneDisagreementQuery } from '../graphql/generated/graphql.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { letterObservers } from '../ui/observer-mark.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { SeverityMark } from '../ui/severity.js';
import { useShortKeys, useShortKeysSetting } from '../ui/short-keys.js';
import { Skeleton } from '../ui/skeleton.js';
import { sentenceCase } from '../ui/words.js';
import { AskForm } from './ask-form.js';
import { BoundsTable } from './bounds-table.js';
import { cellWords } from './cell-words.js';
import { conflictSentences, type CellFit } from './conflict-words.js';
import { ConsensusTable } from './consensus-table.js';
import { inOrderOfWork } from './disagreement-order.js';
import { DisagreementList, OneDisagreement } from './disagreement-documents.js';
import { kindName } from './kind-names.js';
import { LinkDetails } from './link-details.js';
import { LinkMap } from './link-map.js';
import { ofReviews } from './listed-disagreement.js';
import { PairingPart } from './pairing-part.js';
import { ReviewFrame } from './review-frame.js';
import { RulingForm } from './ruling-form.js';
import { RulingHistory } from './ruling-history.js';
import { SideBySide } from './side-by-side.js';
import { SourceLines } from './source-lines.js';

export type FullDisagreement = NonNullable<OneDisagreementQuery['count']['review']['disagreement']>;

/** One disagreement: what happened, what each observer says, and the ruling on it. */
export function DisagreementPage(props: {
  readonly countId: string;
  readonly disagreementId: string;
}): ReactNode {
  const [result, again] = useQuery({
    query: OneDisagreement,
    variables: { id: props.countId, disagreementId: props.disagreementId },
    context: ofReviews,
  });
  const neighbours = useNeighbours(props.countId, props.disagreementId);
  const disagreement = result.data?.count.review.disagreement;
  return (
    <Page
      title={disagreement ? sentenceCase(kindName(disagreement.kind)) : t`Disagreement`}
      intro={<Neighbours countId={props.countId} {...neighbours} />}
    >
      <ReviewFrame
        countId={props.countId}
        act={
          result.data !== undefined && disagreement ? (
            <Acts
              data={result.data}
              disagreement={disagreement}
              next={neighbours.next}
              onStale={() => again({ requestPolicy: 'network-only' })}
            />
          ) : null
        }
      >
        <Answer
          result={result}
          skeleton={<Skeleton rows={16} label={t`Loading the disagreement.`} />}
          retry={() => again({ requestPolicy: 'network-only' })}
        >
          {({ count }) =>
            count.review.disagreement ? (
              <Matter disagreement={count.review.disagreement} count={count} />
            ) : (
              <Notice kind="plain" title={t`This disagreement is no longer there.`}>
                <p>
                  <Trans>
                    A tally or a ruling has changed what it was about.{' '}
                    <Link href={pathOf('counts', count.id, 'disagreements')}>Back to the list</Link>
                  </Trans>
                </p>
              </Notice>
            )
          }
        </Answer>
      </ReviewFrame>
    </Page>
  );
}

interface NeighboursOf {
  readonly at: number | null;
  readonly of: number;
  readonly previous: string | null;
  readonly next: string | null;
}

/** Where this one stands in the order of work. */
function useNeighbours(countId: string, disagreementId: string): NeighboursOf {
  const [{ data }] = useQuery({
    query: DisagreementList,
    variables: { id: countId },
    requestPolicy: 'cache-first',
    context: ofReviews,
  });
  return useMemo(() => {
    const ids = inOrderOfWork(data?.count.review.disagreements ?? []).map(({ id }) => id);
    const at = ids.indexOf(disagreementId);
    return {
      at: at === -1 ? null : at + 1,
      of: ids.length,
      previous: ids[at - 1] ?? null,
      next: at === -1 ? null : (ids[at + 1] ?? null),
    };
  }, [data, disagreementId]);
}

function Neighbours(props: NeighboursOf & { readonly countId: string }): ReactNode {
  const [, navigate] = useLocation();
  const [keysSetting] = useShortKeysSetting();
  const list = pathOf('counts', props.countId, 'disagreements');
  const pageOf = (id: string): string => pathOf('counts', props.countId, 'disagreements', id);
  const { at, of: all, previous, next } = props;
  useShortKeys(keysSetting === 'on', {
    j: next === null ? undefined : () => navigate(pageOf(next)),
    k: previous === null ? undefined : () => navigate(pageOf(previous)),
    u: () => navigate(list),
    r: () => document.getElementById('ruling-heading')?.focus(),
  });
  return (
    <nav className="row not-printed" aria-label={t`Disagreements`}>
      <Link href={list}>
        <Trans>All disagreements</Trans>
      </Link>
      <span>{at === null ? '\u00a0' : t`${at} of ${all}, by birds at stake`}</span>
      {previous === null ? null : (
        <Link href={pageOf(previous)}>
          <Trans context="disagreement">Previous</Trans>
        </Link>
      )}
      {next === null ? null : (
        <Link href={pageOf(next)}>
          <Trans context="disagreement">Next</Trans>
        </Link>
      )}
      {keysSetting === 'on' ? (
        <span className="small keys-hint">
          <Trans>
            <kbd>j</kbd> next, <kbd>k</kbd> previous, <kbd>u</kbd> list, <kbd>r</kbd> rule
          </Trans>
        </span>
      ) : null}
    </nav>
  );
}

function Matter(props: {
  readonly disagreement: FullDisagreement;
  readonly count: OneDisagreementQuery['count'];
}): ReactNode {
  const { disagreement, count } = props;
  const { timeZone } = count;
  const { group, link } = disagreement;
  // A possible double count is about two sightings; the whole tallies of a place say nothing on it.
  const cell = link ? null : disagreement.cell;
  const { birds } = disagreement;
  const letters = useMemo(
    () =>
      letterObservers([
        ...(cell?.tallies.map((tally) => ({ id: tally.observer, name: tally.observerName })) ?? []),
        ...disagreement.observers,
        ...disagreement.lines.map(({ tally }) => tally.observer),
      ]),
    [cell, disagreement],
  );
  return (
    <>
      <p className="sentence">{disagreement.text}</p>
      <p className="row soft">
        <SeverityMark severity={disagreement.severity} />
        <span>
          <Plural value={birds} one="# bird at stake" other="# birds at stake" />
        </span>
        {cell ? <span>{cellWords(cell)}</span> : null}
      </p>
      {cell ? <Conflict cell={cell} /> : null}
      {cell ? (
        <SideBySide
          cell={cell}
          sections={count.sections.filter(({ id }) => cell.sections.some((one) => one.id === id))}
          vantages={count.vantages}
          groupTaxa={group?.taxa ?? null}
          letters={letters}
        />
      ) : null}
      {link ? (
        <>
          <LinkDetails link={link} timeZone={timeZone} />
          <LinkMap
            link={link}
            sections={count.sections}
            vantages={count.vantages}
            timeZone={timeZone}
          />
        </>
      ) : null}
      {cell && cell.pairings.length > 0 ? (
        <PairingPart
          cell={cell}
          groupTaxa={group?.taxa ?? null}
          observerIds={disagreement.observers.map(({ id }) => id)}
          letters={letters}
        />
      ) : null}
      {group ? <ConsensusTable group={group} /> : null}
      {cell ? (
        <BoundsTable bounds={cell.bounds} groupTaxa={group?.taxa ?? null} letters={letters} />
      ) : null}
      <SourceLines lines={disagreement.lines} letters={letters} timeZone={timeZone} />
    </>
  );
}

/** Of the whole place, not only of the birds of this disagreement. */
function Conflict(props: { readonly cell: CellFit }): ReactNode {
  const [head, ...rest] = conflictSentences(props.cell);
  if (head === undefined) return null;
  return (
    <Notice kind="caution" title={head}>
      {rest.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  );
}

function Acts(props: {
  readonly data: OneDisagreementQuery;
  readonly disagreement: FullDisagreement;
  readonly next: string | null;
  readonly onStale: () => void;
}): ReactNode {
  const { count, me } = props.data;
  const { disagreement } = props;
  return (
    <>
      <RulingForm
        key={disagreement.ruling?.id ?? 'none'}
        countId={count.id}
        disagreement={disagreement}
        mayRule={count.may.includes('RULE')}
        next={props.next}
        inputHash={count.review.inputHash}
        onStale={props.onStale}
      />
      <RulingHistory
        rulings={count.review.rulings}
        disagreement={disagreement}
        meId={me?.id ?? null}
        maySecond={count.may.includes('SECOND')}
        mayRule={count.may.includes('RULE')}
        timeZone={count.timeZone}
      />
      <AskForm
        countId={count.id}
        disagreement={disagreement}
        mayAsk={count.may.includes('ASK')}
        timeZone={count.timeZone}
      />
    </>
  );
}
