import { useCallback, useMemo, useState, type ReactNode } from 'react';
import { useClient } from 'urql';
import { Link } from 'wouter';
import { useAnnounce } from '../ui/announcer.js';
import { Notice } from '../ui/notice.js';
import { pathOf } from '../ui/path.js';
import { useWakeLock } from '../ui/use-wake-lock.js';
import { countOf } from '../ui/words.js';
import { draftFaults, serverFaults, type DraftFault } from './draft-faults.js';
import { forgetDraft } from './draft-store.js';
import { stampAt } from './edited-line.js';
import { runningTotal, type Draft } from './draft.js';
import { FaultSummary } from './fault-summary.js';
import { GridPart } from './grid-part.js';
import { LinesPart } from './lines-part.js';
import { putInOutbox, sendTally, takeFromOutbox } from './outbox.js';
import type { Assignment, OwnPart } from './own-part.js';
import { RaftPart, type RemovedRaft } from './raft-part.js';
import { placeOf } from './place.js';
import { ReviewStep } from './review-step.js';
import { useOutbox, useTaken } from './send-kept-tallies.js';
import { TallyFoot } from './tally-foot.js';
import { tallyInput } from './tally-input.js';
import { useDraft } from './use-draft.js';
import { WholePart } from './whole-part.js';

/**
 * Writing a tally: lines first, the whole of it below, then a look over it, then sending. Every
 * change is kept on the phone at once.
 */
export function WriteTally(props: {
  readonly count: OwnPart;
  readonly assignment: Assignment;
  readonly personId: string;
  readonly first: Draft;
  /** Told of every change, with the draft as it is then. */
  readonly onChanged: (draft: Draft) => void;
  /** Set for a correction, which may be given up; the submitted tally then stands. */
  readonly onGivenUp: (() => void) | null;
}): ReactNode {
  const { count, assignment, personId, onChanged } = props;
  const kept = useDraft(personId, props.first, onChanged);
  const { draft, isKept, change, undo } = kept;
  const [step, setStep] = useState<'write' | 'grid' | 'review'>('write');
  const [isAdding, setAdding] = useState(false);
  const [openLine, setOpenLine] = useState<string | null>(null);
  const [openRaft, setOpenRaft] = useState<string | null>(null);
  const [removedRaft, setRemovedRaft] = useState<RemovedRaft | null>(null);
  const [showFaults, setShowFaults] = useState(false);
  const [isSignedOut, setSignedOut] = useState(false);
  const [isSending, setSending] = useState(false);
  const [isOutboxKept, setOutboxKept] = useState(true);
  const client = useClient();
  const announce = useAnnounce();
  const waiting = useOutbox(personId).find((item) => item.input.id === draft.id);
  const taken = useTaken(draft.id);

  const isScreenOn = useWakeLock(step === 'write');
  const place = useMemo(() => placeOf(assignment, count), [assignment, count]);
  const expected = useMemo(() => count.expectedTaxa.map(({ taxon }) => taxon), [count]);
  const setDraft = useCallback((next: Draft) => change(() => next), [change]);
  const { window: counted } = assignment;
  // A correction, and a sheet typed in later, state times of their own.
  const stamp = useCallback(
    () => (draft.replaces === null ? stampAt(Date.now(), counted, count.timeZone) : null),
    [draft.replaces, counted, count.timeZone],
  );

  const refusal = waiting?.refusal ?? null;
  const faults = useMemo<readonly DraftFault[]>(
    () => [
      ...(showFaults ? draftFaults(draft) : []),
      ...(refusal === null ? [] : serverFaults(draft, refusal.faults)),
    ],
    [draft, showFaults, refusal],
  );
  const total = runningTotal(draft);
  const back = pathOf('counts', count.id, 'assignments');

  function lookOver(): void {
    const found = draftFaults(draft);
    setShowFaults(true);
    if (found.length > 0) {
      announce(`${countOf(found.length, 'thing')} to mend before sending.`);
      return;
    }
    setStep('review');
    window.scrollTo(0, 0);
  }

  async function send(): Promise<void> {
    const input = tallyInput(draft, {
      sectionIds: assignment.sections.map(({ id }) => id),
      window: assignment.window,
      vantageId: assignment.vantage?.id ?? null,
      timeZone: count.timeZone,
    });
    const item = { personId, assignmentId: assignment.id, input, since: Date.now() };
    if (!putInOutbox(item)) setOutboxKept(false);
    setSending(true);
    const answer = await sendTally(client, { ...item, refusal: null });
    setSending(false);
    window.scrollTo(0, 0);
    if (answer.outcome === 'taken') {
      forgetDraft(personId, assignment.id);
      announce(`Your tally was sent: ${countOf(answer.taken.total, 'bird')}.`);
    } else if (answer.outcome === 'refused') {
      setStep('write');
      setSignedOut(answer.refusal.code === 'NOT_SIGNED_IN');
    }
  }

  if (taken !== null) return <Done total={taken.total} version={taken.version} back={back} />;
  if (waiting !== undefined && refusal === null && !isSending && !isSignedOut) {
    return (
      <Kept
        total={total.using + total.flyingThrough}
        back={back}
        onChangeIt={() => {
          takeFromOutbox(draft.id);
          setStep('write');
        }}
      />
    );
  }

  if (step === 'review') {
    return (
      <ReviewStep
        draft={draft}
        count={count}
        assignment={assignment}
        isSending={isSending}
        onBack={() => setStep('write')}
        onSend={() => void send()}
      />
    );
  }
  if (step === 'grid') {
    return (
      <GridPart
        undo={undo}
        faults={faults}
        change={change}
        onDone={() => {
          setStep('write');
          window.scrollTo(0, 0);
        }}
      />
    );
  }
  const lines = {
    undo,
    sections: count.sections,
    place,
    expected,
    faults,
    stamp,
    isAdding,
    onAdding: setAdding,
    onOpen: setOpenLine,
    change,
  };
  if (openLine !== null && draft.lines.some(({ id }) => id === openLine)) {
    // One thing at a time: the line, and its own way back.
    return <LinesPart {...lines} openId={openLine} />;
  }
  if (openRaft !== null && draft.rafts.some(({ id }) => id === openRaft)) {
    return (
      <RaftPart
        draft={draft}
        faults={faults}
        openId={openRaft}
        onOpen={setOpenRaft}
        removed={removedRaft}
        onRemoved={setRemovedRaft}
        onChange={setDraft}
      />
    );
  }
  return (
    <div className="stack write-tally">
      {isKept && isOutboxKept ? null : (
        <Notice kind="refused" title="This phone does not keep the draft.">
          <p>
            Its storage is full or switched off. Do not close this page before the tally is sent;
            note the numbers on paper too.
          </p>
        </Notice>
      )}
      {isSignedOut ? (
        <Notice kind="refused" title="You are signed out.">
          <p>
            Open your invite link again, or sign in. The tally is kept on this phone and goes then.
          </p>
        </Notice>
      ) : null}
      {refusal !== null || faults.length > 0 ? (
        <FaultSummary
          headline={
            refusal?.message ?? `${countOf(faults.length, 'thing')} to mend before sending.`
          }
          faults={faults}
          draft={draft}
        />
      ) : null}
      {draft.replaces === null ? null : (
        <Notice kind="plain" title="You are correcting a submitted tally.">
          <p>The earlier version stays on record, with your reason for the change.</p>
        </Notice>
      )}
      <LinesPart {...lines} openId={null} />
      <div>
        <button type="button" className="button" data-kind="quiet" onClick={() => setStep('grid')}>
          Type in a paper sheet
        </button>
      </div>
      <RaftPart
        draft={draft}
        faults={faults}
        openId={null}
        onOpen={setOpenRaft}
        removed={removedRaft}
        onRemoved={setRemovedRaft}
        onChange={setDraft}
      />
      {isScreenOn ? <p className="hint">The screen stays on while this page is open.</p> : null}
      <WholePart
        draft={draft}
        count={count}
        personId={personId}
        place={place}
        expected={expected}
        faults={faults}
        change={change}
      />
      {props.onGivenUp === null ? null : (
        <div>
          <button
            type="button"
            className="button"
            data-kind="quiet"
            onClick={() => {
              forgetDraft(personId, assignment.id);
              takeFromOutbox(draft.id);
              props.onGivenUp?.();
            }}
          >
            Leave the tally as it was submitted
          </button>
        </div>
      )}
      <TallyFoot undo={undo} onAdd={() => setAdding(true)} onLookOver={lookOver} />
    </div>
  );
}

function Done(props: {
  readonly total: number;
  readonly version: number;
  readonly back: string;
}): ReactNode {
  return (
    <Notice kind="done" title={`Sent: ${countOf(props.total, 'bird')}. Thank you.`}>
      <p>
        The tally is with the compilers now
        {props.version > 1 ? `, as version ${props.version}` : ''}. If they have a question, it
        appears under My assignments.
      </p>
      <p>
        <Link href={props.back} className="button" data-kind="main">
          Back to my assignments
        </Link>
      </p>
    </Notice>
  );
}

function Kept(props: {
  readonly total: number;
  readonly back: string;
  readonly onChangeIt: () => void;
}): ReactNode {
  return (
    <Notice kind="offline" title="Kept on this phone, not yet sent.">
      <p>
        {countOf(props.total, 'bird')}. The tally goes by itself when there is a connection and this
        page, or any page of the count, is open. It cannot be sent twice.
      </p>
      <p className="row">
        <Link href={props.back} className="button" data-kind="main">
          Back to my assignments
        </Link>
        <button type="button" className="button" onClick={props.onChangeIt}>
          Change it first
        </button>
      </p>
    </Notice>
  );
}
