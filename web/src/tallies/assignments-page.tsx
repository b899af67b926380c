import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import { FieldSheetLinks } from '../plans/field-sheet-links.js';
import { useSession } from '../people/session.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed, span } from '../ui/words.js';
import { Cautions } from './cautions.js';
import type { KeptDraft, OutboxItem } from './kept-tables.js';
import { tallyFor, useOwnPart, type Assignment, type OwnPart } from './own-part.js';
import { QueriesToMe } from './queries-to-me.js';
import { stateInWords } from './phone-tallies.js';
import { TalliesOnPhone } from './tallies-on-phone.js';
import { useDrafts, useKeptOwnParts, useOutbox } from './use-kept.js';
import { countedBirds, countedLines } from '../ui/counted.js';

/** Where an observer starts: what to count, from where, when, and how far it is. */
export function AssignmentsPage(props: { readonly countId: string }): ReactNode {
  const { person } = useSession();
  const personId = person?.id ?? '';
  const own = useOwnPart(props.countId, personId);
  const drafts = useDrafts(personId) ?? [];
  const outbox = useOutbox(personId) ?? [];
  const otherParts = useKeptOwnParts(personId) ?? [];
  return (
    <Page title={t`My assignments`} width="entry" intro={t`What you count, from where, and when.`}>
      <Answer
        result={own}
        skeleton={<Skeleton rows={7} label={t`Loading your assignments.`} />}
        retry={own.again}
      >
        {(count) => {
          const mine = count.assignments.filter((one) => one.person.id === personId);
          return (
            <div className="stack">
              <QueriesToMe
                queries={count.queries.filter((query) => query.to.id === personId)}
                timeZone={count.timeZone}
              />
              {mine.length === 0 ? (
                <Notice kind="plain" title={t`You have no assignment yet.`}>
                  <p>
                    <Trans>
                      The leader of the count says who counts which section. Come back when they
                      have.
                    </Trans>
                  </p>
                </Notice>
              ) : (
                <ul className="plain-list stack">
                  {mine.map((assignment) => (
                    <AssignmentItem
                      key={assignment.id}
                      assignment={assignment}
                      count={count}
                      draft={drafts.find((kept) => kept.assignmentId === assignment.id) ?? null}
                      item={outbox.findLast((item) => item.assignmentId === assignment.id) ?? null}
                    />
                  ))}
                </ul>
              )}
              <TalliesOnPhone
                drafts={drafts}
                outbox={outbox}
                parts={[count, ...otherParts.filter(({ id }) => id !== count.id)]}
              />
              <Cautions open={mine.some((one) => !one.submitted)} />
            </div>
          );
        }}
      </Answer>
    </Page>
  );
}

function AssignmentItem(props: {
  readonly assignment: Assignment;
  readonly count: OwnPart;
  readonly draft: KeptDraft | null;
  /** What was handed over last for it. */
  readonly item: OutboxItem | null;
}): ReactNode {
  const { assignment, count, item } = props;
  const tally = tallyFor(assignment, count);
  const draft = props.draft?.draft ?? null;
  const page = pathOf('counts', count.id, 'assignments', assignment.id);
  const isNewest =
    item?.state.kind === 'received' && item.state.version > (tally?.version ?? 0) && draft === null;
  let state = t`Not begun.`;
  let act: string | null = t`Begin the tally`;
  if (item !== null && (item.state.kind !== 'received' || isNewest)) {
    state = stateInWords(item.state, count);
    act = item.state.kind === 'refused' ? t`Mend it` : t`Look at it`;
  } else if (draft !== null && draft.replaces !== null) {
    const lines = countedLines(draft.lines.length);
    state = t`A correction is begun on this phone: ${lines}.`;
    act = t`Go on with the correction`;
  } else if (draft !== null && tally !== null) {
    state = t`A tally was received, and another is on this phone. Say which one stands.`;
    act = t`Look at both`;
  } else if (draft !== null) {
    const lines = countedLines(draft.lines.length);
    state = t`Begun on this phone: ${lines}, not yet sent.`;
    act = t`Go on`;
  } else if (tally !== null) {
    const { version } = tally;
    const lines = countedLines(tally.lines.length);
    const birds = countedBirds(tally.total);
    state =
      version > 1
        ? t`Submitted: ${lines}, ${birds}, version ${version}.`
        : t`Submitted: ${lines}, ${birds}.`;
    act = t`Look at it or correct it`;
  } else if (assignment.window.closed) {
    state = t`The window is closed; no tally is taken for it any more.`;
    act = null;
  }
  const hours = span(assignment.window.start, assignment.window.end, count.timeZone);
  return (
    <li className="assignment">
      <h2>{listed(assignment.sections.map(({ name }) => name))}</h2>
      <dl className="facts">
        <dt>
          <Trans>Window</Trans>
        </dt>
        <dd>{assignment.window.closed ? t`${hours} (closed)` : hours}</dd>
        <dt>
          <Trans>From</Trans>
        </dt>
        <dd>{assignment.vantage?.name ?? t`where you see the section best`}</dd>
        <dt>
          <Trans>State</Trans>
        </dt>
        <dd>{state}</dd>
        <dt>
          <Trans>Field sheet</Trans>
        </dt>
        <dd>
          <FieldSheetLinks assignmentId={assignment.id} />
        </dd>
      </dl>
      {act === null ? null : (
        <Link href={page} className="button" {...(tally === null ? { 'data-kind': 'main' } : {})}>
          {act}
        </Link>
      )}
    </li>
  );
}
