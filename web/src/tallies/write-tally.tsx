import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { memo, useCallback, useMemo, useState, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import { usePainted } from '../ui/first-paint.js';
import { Notice } from '../ui/notice.js';
import { sameFields } from '../ui/same-fields.js';
import { useWakeLock } from '../ui/use-wake-lock.js';
import { draftFaults, serverFaults, type DraftFault } from './draft-faults.js';
import { stampAt } from './edited-line.js';
import type { Draft } from './draft.js';
import { FaultSummary } from './fault-summary.js';
import type { TallyRefusal } from './kept-tables.js';
import { LinesPart } from './lines-part.js';
import type { Assignment, OwnPart } from './own-part.js';
import { RaftPart, type RemovedRaft } from './raft-part.js';
import { placeOf } from './place.js';
import { GridPart, ReviewStep } from './later-parts.js';
import { TallyFoot } from './tally-foot.js';
import { useDraft } from './use-draft.js';
import { WholePart } from './whole-part.js';

interface Writing {
  readonly count: OwnPart;
  readonly assignment: Assignment;
  readonly personId: string;
  readonly first: Draft;
  /** How often another tab has changed it since the page was opened. */
  readonly arrivals: number;
  /** False if the browser would not keep the last change. */
  readonly isKept: boolean;
  /** Why the server would not take the tally, if it was sent already. */
  readonly refusal: TallyRefusal | null;
  /** Told of every change, with the draft as it is then. */
  readonly onChanged: (draft: Draft) => void;
  /** Hands the tally over to be sent; from then on the page shows what becomes of it. */
  readonly onSend: (draft: Draft) => Promise<void>;
  /** Set for a correction, which may be given up; the submitted tally then stands. */
  readonly onGivenUp: (() => void) | null;
}

/**
 * Writing a tally: lines first, the whole of it below, then a look over it, then sending. Every
 * change is kept on the phone at once. It comes back as `first`, which is no news then: what another
 * tab has changed is told by `arrivals`.
 */
export const WriteTally = memo(TallyForm, (before, after) => sameFields(before, after, 'first'));

function TallyForm(props: Writing): ReactNode {
  const { count, assignment, personId, refusal } = props;
  const { draft, change, undo } = useDraft(personId, props);
  const [step, setStep] = useState<'write' | 'grid' | 'review'>('write');
  const [isAdding, setAdding] = useState(false);
  const [openLine, setOpenLine] = useState<string | null>(null);
  const [openRaft, setOpenRaft] = useState<string | null>(null);
  const [removedRaft, setRemovedRaft] = useState<RemovedRaft | null>(null);
  const [showFaults, setShowFaults] = useState(false);
  const [isSending, setSending] = useState(false);
  const announce = useAnnounce();

  const isScreenOn = useWakeLock(step === 'write');
  const isPainted = usePainted();
  const place = useMemo(() => placeOf(assignment, count), [assignment, count]);
  const expected = useMemo(() => count.expectedTaxa.map(({ taxon }) => taxon), [count]);
  const setDraft = useCallback((next: Draft) => change(() => next), [change]);
  const { window: counted } = assignment;
  // A correction, and a sheet typed in later, state times of their own.
  const stamp = useCallback(
    () => (draft.replaces === null ? stampAt(Date.now(), counted, count.timeZone) : null),
    [draft.replaces, counted, count.timeZone],
  );

  const faults = useMemo<readonly DraftFault[]>(
    () => [
      ...(showFaults ? draftFaults(draft) : []),
      ...(refusal === null ? [] : serverFaults(draft, refusal.faults)),
    ],
    [draft, showFaults, refusal],
  );

  function lookOver(): void {
    const found = draftFaults(draft);
    setShowFaults(true);
    if (found.length > 0) {
      announce(toMend(found.length));
      return;
    }
    setStep('review');
    window.scrollTo(0, 0);
  }

  async function send(): Promise<void> {
    setSending(true);
    await props.onSend(draft);
    window.scrollTo(0, 0);
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
      {props.isKept ? null : (
        <Notice kind="refused" title={t`This phone does not keep the draft.`}>
          <p>
            <Trans>
              Its storage is full or switched off. Do not close this page before the tally is sent;
              note the numbers on paper too.
            </Trans>
          </p>
        </Notice>
      )}
      {refusal !== null || faults.length > 0 ? (
        <FaultSummary
          headline={refusal?.message ?? toMend(faults.length)}
          faults={faults}
          draft={draft}
        />
      ) : null}
      {draft.replaces === null ? null : (
        <Notice kind="plain" title={t`You are correcting a submitted tally.`}>
          <p>
            <Trans>The earlier version stays on record, with your reason for the change.</Trans>
          </p>
        </Notice>
      )}
      <LinesPart {...lines} openId={null} />
      <div>
        <button type="button" className="button" data-kind="quiet" onClick={() => setStep('grid')}>
          <Trans>Type in a paper sheet</Trans>
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
      {isScreenOn ? (
        <p className="hint">
          <Trans>The screen stays on while this page is open.</Trans>
        </p>
      ) : null}
      {isPainted ? (
        <WholePart
          draft={draft}
          count={count}
          personId={personId}
          place={place}
          expected={expected}
          faults={faults}
          change={change}
        />
      ) : null}
      {props.onGivenUp === null ? null : (
        <div>
          <button type="button" className="button" data-kind="quiet" onClick={props.onGivenUp}>
            <Trans>Leave the tally as it was submitted</Trans>
          </button>
        </div>
      )}
      <TallyFoot undo={undo} onAdd={() => setAdding(true)} onLookOver={lookOver} />
    </div>
  );
}

function toMend(faults: number): string {
  return plural(faults, {
    one: '# thing to mend before sending.',
    other: '# things to mend before sending.',
  });
}
