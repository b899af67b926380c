import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useCallback, useEffect, useRef, useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { v7 } from 'uuid';
import { useSession } from '../people/session.js';
import { useAnnounce } from '../ui/announcer.js';
import { Answer } from '../ui/answer.js';
import { loadAllLater } from '../ui/later.js';
import { usePainted } from '../ui/first-paint.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed, span } from '../ui/words.js';
import { asDraft } from './as-draft.js';
import { emptyDraft, type Draft } from './draft.js';
import type { OutboxItem } from './kept-tables.js';
import {
  ChangedTwice,
  QueriesToMe,
  ReceivedAndHere,
  ReceivedTally,
  SubmittedTally,
  TallyOnItsWay,
} from './later-parts.js';
import { putInOutbox, takeFromOutbox } from './outbox.js';
import { tallyFor, useOwnPart, type Assignment, type OwnPart } from './own-part.js';
import { askForPersistence } from './persistent-storage.js';
import { useOpenDraft, useOutbox } from './use-kept.js';
import { WriteTally } from './write-tally.js';
import { countedBirds, countedLines } from '../ui/counted.js';

/** One assignment: its tally is written here, sent from here, and looked at afterwards. */
export function TallyPage(props: {
  readonly countId: string;
  readonly assignmentId: string;
}): ReactNode {
  const { person } = useSession();
  const personId = person?.id ?? '';
  const own = useOwnPart(props.countId, personId);
  const isPainted = usePainted();
  const assignment = own.data?.assignments.find(({ id }) => id === props.assignmentId);
  const title =
    assignment === undefined
      ? t`Tally`
      : tallyOf(listed(assignment.sections.map(({ name }) => name)));
  return (
    <Page
      title={title}
      width="entry"
      intro={
        assignment === undefined || own.data === undefined || !isPainted
          ? '\u00a0'
          : whenAndWhere(
              span(assignment.window.start, assignment.window.end, own.data.timeZone),
              assignment.vantage?.name ?? t`where you see it best`,
            )
      }
    >
      <Answer result={own} skeleton={<LoadingAssignment />} retry={own.again}>
        {(count) =>
          assignment === undefined || assignment.person.id !== personId ? (
            <Notice kind="plain" title={t`This assignment is not yours or is no longer there.`}>
              <p>
                <Link href={pathOf('counts', count.id, 'assignments')}>
                  <Trans>Back to my assignments</Trans>
                </Link>
              </p>
            </Notice>
          ) : (
            <AssignmentTally
              count={count}
              assignment={assignment}
              personId={personId}
              askAgain={own.again}
            />
          )
        }
      </Answer>
    </Page>
  );
}

function LoadingAssignment(): ReactNode {
  return <Skeleton rows={9} label={t`Loading the assignment.`} />;
}

function AssignmentTally(props: {
  readonly count: OwnPart;
  readonly assignment: Assignment;
  readonly personId: string;
  readonly askAgain: () => void;
}): ReactNode {
  const { count, assignment, personId } = props;
  const { open, state } = useOpenDraft(personId, assignment.id);
  const outbox = useOutbox(personId);
  const [empty] = useState(() => emptyDraft(count.id, assignment.id));
  /** Seen on its way by this page: its thanks stay to be read, though the server's answer makes it known. */
  const [handedOver, setHandedOver] = useState<string | null>(null);
  const announce = useAnnounce();
  const tally = tallyFor(assignment, count);
  const item = outbox?.findLast(({ assignmentId }) => assignmentId === assignment.id) ?? null;
  useFreshTally(item, tally?.version ?? 0, props.askAgain);
  useEffect(() => {
    // The form is on the screen by then.
    const timer = setTimeout(() => void loadAllLater(), 300);
    return () => clearTimeout(timer);
  }, []);

  const keepChange = useCallback(
    (next: Draft) => {
      open.change(next);
      void askForPersistence();
    },
    [open],
  );

  const send = useCallback(
    async (sent: Draft) => {
      const [{ tallyInput }] = await Promise.all([import('./tally-input.js'), open.written()]);
      setHandedOver(sent.id);
      await putInOutbox({
        id: sent.id,
        personId,
        countId: count.id,
        assignmentId: assignment.id,
        input: tallyInput(sent, {
          sectionIds: assignment.sections.map(({ id }) => id),
          window: assignment.window,
          vantageId: assignment.vantage?.id ?? null,
          timeZone: count.timeZone,
        }),
        draft: sent,
        edit: open.edit,
        since: Date.now(),
      });
    },
    [open, personId, count, assignment],
  );
  // What was handed over and is not received can be gone on with, also where its draft was lost.
  const draft = state.draft ?? draftIn(item);
  const written = draft ?? empty;
  const giveUp = useCallback(() => {
    void takeFromOutbox(written.id);
    void open.forget();
  }, [open, written.id]);

  if (state.isLoading || outbox === null) return <LoadingAssignment />;
  const back = pathOf('counts', count.id, 'assignments');

  if (draft !== null && state.rivals.length > 0) {
    return (
      <ChangedTwice
        versions={[{ draft, edit: open.edit ?? '', keptAt: state.keptAt }, ...state.rivals]}
        timeZone={count.timeZone}
        onChoose={(chosen) => void open.settle(chosen)}
      />
    );
  }

  const isOfDraft = item !== null && (draft === null || draft.id === item.id);
  if (isOfDraft && (item.state.kind === 'waiting' || item.state.kind === 'sending')) {
    if (handedOver !== item.id) setHandedOver(item.id);
    return (
      <TallyOnItsWay
        item={item}
        back={back}
        onChangeIt={() => {
          void takeFromOutbox(item.id).then((isBack) => {
            if (!isBack) announce(t`The tally is being sent just now.`);
            else if (state.draft === null && draft !== null) open.change(draft);
          });
        }}
      />
    );
  }
  if (isOfDraft && item.state.kind === 'received') {
    const isChangedSince = draft !== null && item.edit !== null && open.edit !== item.edit;
    const isNewest = tally === null || tally.version < item.state.version;
    if (!isChangedSince && (isNewest || handedOver === item.id || draft !== null)) {
      return <ReceivedTally received={item.state} timeZone={count.timeZone} back={back} />;
    }
  }
  if (draft !== null && tally !== null && isAnother(draft, tally.id, item)) {
    return (
      <ReceivedAndHere
        tally={tally}
        draft={draft}
        timeZone={count.timeZone}
        isClosed={assignment.window.closed}
        onKeepReceived={() => {
          void takeFromOutbox(draft.id);
          void open.forget();
          announce(t`The received tally stands.`);
        }}
        onCorrect={() => {
          void takeFromOutbox(draft.id);
          open.change({ ...draft, id: v7(), replaces: tally.id });
        }}
      />
    );
  }
  if (draft === null && tally === null && assignment.window.closed) {
    return (
      <Notice kind="plain" title={t`This window is closed.`}>
        <p>
          <Trans>
            No tally is taken for it any more. If yours is missing, tell the leader of the count.
          </Trans>
        </p>
      </Notice>
    );
  }
  if (draft !== null || tally === null) {
    return (
      <WriteTally
        count={count}
        assignment={assignment}
        personId={personId}
        first={written}
        arrivals={state.arrivals}
        isKept={state.isKept}
        refusal={item?.id === written.id && item.state.kind === 'refused' ? item.state : null}
        onChanged={keepChange}
        onSend={send}
        onGivenUp={tally === null ? null : giveUp}
      />
    );
  }
  return (
    <div className="stack">
      <Notice
        kind="done"
        title={submittedWords(countedLines(tally.lines.length), countedBirds(tally.total))}
      >
        <p>
          {tally.version > 1 ? thisIsVersion(tally.version) : null}{' '}
          <Trans>
            Nothing more is to do here. If the compiler has a question, it appears under My
            assignments.
          </Trans>
        </p>
      </Notice>
      <QueriesToMe
        queries={count.queries.filter(({ to }) => to.id === personId)}
        timeZone={count.timeZone}
      />
      <SubmittedTally tally={tally} timeZone={count.timeZone} />
      {assignment.window.closed ? (
        <p className="soft">
          <Trans>The window is closed. To correct something now, tell the compiler.</Trans>
        </p>
      ) : (
        <div>
          <button
            type="button"
            className="button"
            onClick={() => {
              void import('./tally-input.js').then(({ correctionOf }) => {
                open.change(
                  correctionOf(tally, {
                    countId: count.id,
                    assignmentId: assignment.id,
                    timeZone: count.timeZone,
                    observerId: personId,
                  }),
                );
              });
            }}
          >
            <Trans>Correct this tally</Trans>
          </button>
        </div>
      )}
    </div>
  );
}

function draftIn(item: OutboxItem | null): Draft | null {
  return item === null || item.state.kind === 'received' ? null : asDraft(item.draft);
}

/**
 * Whether a draft stands against the tally that the server has, and is not a correction of it. The
 * draft with the server's own id is one whose answer was lost and that was changed since.
 */
function isAnother(draft: Draft, submittedId: string, item: OutboxItem | null): boolean {
  if (draft.replaces === submittedId) return false;
  return draft.id !== submittedId || item?.id !== draft.id || item.state.kind !== 'waiting';
}

/**
 * Asks for the server's tally anew, once, where the outbox shows that it has another than the page:
 * one was received from another tab, or refused because another phone had sent one.
 */
function useFreshTally(item: OutboxItem | null, version: number, askAgain: () => void): void {
  const asked = useRef<string | null>(null);
  useEffect(() => {
    if (item === null) return;
    const isOutdated =
      (item.state.kind === 'received' && item.state.version > version) ||
      (item.state.kind === 'refused' && conflictCodes.includes(item.state.code));
    const about = `${item.id} ${item.state.kind}`;
    if (!isOutdated || asked.current === about) return;
    asked.current = about;
    askAgain();
  }, [item, version, askAgain]);
}

/** The server has a tally of this observer for the assignment, or another version of this one. */
const conflictCodes: readonly string[] = ['ALREADY_SUBMITTED', 'ID_REUSED'];

function tallyOf(sections: string): string {
  return t`Tally: ${sections}`;
}

function whenAndWhere(hours: string, place: string): string {
  return t`${hours}, from ${place}`;
}

function submittedWords(lines: string, birds: string): string {
  return t`Submitted: ${lines}, ${birds}.`;
}

function thisIsVersion(version: number): string {
  return t`This is version ${version}; the earlier ones stay on record.`;
}
