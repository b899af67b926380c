import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { useSession } from '../people/session.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { Skeleton } from '../ui/skeleton.js';
import { countOf, listed, span } from '../ui/words.js';
import { emptyDraft, type Draft } from './draft.js';
import { keepDraft, readDraft } from './draft-store.js';
import { tallyFor, useOwnPart, type Assignment, type OwnPart } from './own-part.js';
import { SubmittedTally } from './submitted-tally.js';
import { correctionOf } from './tally-input.js';
import { WriteTally } from './write-tally.js';

/** One assignment: its tally is written here, sent from here, and looked at afterwards. */
export function TallyPage(props: {
  readonly countId: string;
  readonly assignmentId: string;
}): ReactNode {
  const { person } = useSession();
  const personId = person?.id ?? '';
  const own = useOwnPart(props.countId, personId);
  const assignment = own.data?.assignments.find(({ id }) => id === props.assignmentId);
  const title =
    assignment === undefined
      ? 'Tally'
      : `Tally: ${listed(assignment.sections.map(({ name }) => name))}`;
  return (
    <Page
      title={title}
      width="entry"
      intro={
        assignment === undefined || own.data === undefined
          ? '\u00a0'
          : `${span(assignment.window.start, assignment.window.end, own.data.timeZone)}, from ${
              assignment.vantage?.name ?? 'where you see it best'
            }`
      }
    >
      <Answer
        result={own}
        skeleton={<Skeleton rows={9} label="Loading the assignment." />}
        retry={own.again}
      >
        {(count) =>
          assignment === undefined || assignment.person.id !== personId ? (
            <Notice kind="plain" title="This assignment is not yours or is no longer there.">
              <p>
                <Link href={pathOf('counts', count.id, 'assignments')}>Back to my assignments</Link>
              </p>
            </Notice>
          ) : (
            <AssignmentTally count={count} assignment={assignment} personId={personId} />
          )
        }
      </Answer>
    </Page>
  );
}

function AssignmentTally(props: {
  readonly count: OwnPart;
  readonly assignment: Assignment;
  readonly personId: string;
}): ReactNode {
  const { count, assignment, personId } = props;
  const [draft, setDraft] = useState<Draft | null>(() => readDraft(personId, assignment.id));
  const tally = tallyFor(assignment, count);

  if (draft !== null || tally === null) {
    if (draft === null && assignment.window.closed) {
      return (
        <Notice kind="plain" title="This window is closed.">
          <p>
            No tally is taken for it any more. If yours is missing, tell the leader of the count.
          </p>
        </Notice>
      );
    }
    return (
      <WriteTally
        count={count}
        assignment={assignment}
        personId={personId}
        first={draft ?? emptyDraft(count.id, assignment.id)}
        // Once begun, this page stays with its writer through the sending: the answer of the server
        // makes the tally known here before "Sent" could be read.
        onChanged={setDraft}
        onGivenUp={tally === null ? null : () => setDraft(null)}
      />
    );
  }
  return (
    <div className="stack">
      <Notice
        kind="done"
        title={`Submitted: ${countOf(tally.lines.length, 'line')}, ${countOf(tally.total, 'bird')}.`}
      >
        <p>
          {tally.version > 1
            ? `This is version ${tally.version}; the earlier ones stay on record. `
            : ''}
          Nothing more is to do here. If the compiler has a question, it appears under My
          assignments.
        </p>
      </Notice>
      <SubmittedTally tally={tally} timeZone={count.timeZone} />
      {assignment.window.closed ? (
        <p className="soft">The window is closed. To correct something now, tell the compiler.</p>
      ) : (
        <div>
          <button
            type="button"
            className="button"
            onClick={() => {
              const correction = correctionOf(tally, {
                countId: count.id,
                assignmentId: assignment.id,
                timeZone: count.timeZone,
                observerId: personId,
              });
              keepDraft(personId, correction);
              setDraft(correction);
            }}
          >
            Correct this tally
          </button>
        </div>
      )}
    </div>
  );
}
