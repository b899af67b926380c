import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { Notice } from '../ui/notice.js';
import { clock, dayAndClock } from '../ui/words.js';
import type { Draft } from './draft.js';
import type { DraftVersion } from './kept-tables.js';
import { SideBySideSheets } from './side-by-side-sheets.js';
import { sheetOfDraft, sheetOfTally } from './tally-sheet.js';

/**
 * The server has a tally for this assignment and the phone another, made on another phone or
 * changed after it was sent. Both are shown, and the observer says which one stands.
 */
export function ReceivedAndHere(props: {
  readonly tally: OwnTallyFragment;
  readonly draft: Draft;
  readonly timeZone: string;
  /** No correction is taken any more. */
  readonly isClosed: boolean;
  readonly onKeepReceived: () => void;
  readonly onCorrect: () => void;
}): ReactNode {
  const { tally, draft, timeZone } = props;
  const [isSure, setSure] = useState(false);
  const when = dayAndClock(tally.submittedAt, timeZone);
  const time = clock(tally.submittedAt, timeZone);
  return (
    <div className="stack">
      <Notice kind="caution" title={t`There are two tallies of this assignment.`}>
        <p>
          <Trans>
            One was received on {when}, perhaps from another phone. The other is on this phone and
            was not received like this. Both are below; say which one stands.
          </Trans>
        </p>
      </Notice>
      <SideBySideSheets
        sheets={[
          sheetOfTally(t`Received ${time}`, tally, timeZone),
          sheetOfDraft(t`On this phone`, draft),
        ]}
      />
      {props.isClosed ? (
        <p className="soft">
          <Trans>
            The window is closed, so the received tally stands. If this phone has it right, tell the
            compiler before you drop it here.
          </Trans>
        </p>
      ) : null}
      {isSure ? (
        <Notice kind="caution" title={t`Drop the tally on this phone?`}>
          <p>
            <Trans>Its numbers are gone then. The received tally is not changed.</Trans>
          </p>
          <p className="row">
            <button type="button" className="button" onClick={() => setSure(false)}>
              <Trans>Keep both for now</Trans>
            </button>
            <button type="button" className="button" onClick={props.onKeepReceived}>
              <Trans>Drop it</Trans>
            </button>
          </p>
        </Notice>
      ) : (
        <p className="row">
          <button type="button" className="button" onClick={() => setSure(true)}>
            <Trans>The received one is right</Trans>
          </button>
          {props.isClosed ? null : (
            <button type="button" className="button" data-kind="main" onClick={props.onCorrect}>
              <Trans>Send this phone’s as a correction</Trans>
            </button>
          )}
        </p>
      )}
    </div>
  );
}

/** A draft that was changed in two tabs at the same time: neither overwrites the other. */
export function ChangedTwice(props: {
  readonly versions: readonly DraftVersion[];
  readonly timeZone: string;
  readonly onChoose: (draft: Draft) => void;
}): ReactNode {
  const titles = props.versions.map(({ keptAt }, index) =>
    versionAt(index + 1, clock(new Date(keptAt).toISOString(), props.timeZone)),
  );
  return (
    <div className="stack">
      <Notice kind="caution" title={t`This tally was changed in two places at the same time.`}>
        <p>
          <Trans>
            It is open in more than one tab, and each has changes that the other has not. All are
            kept below. Go on with one; what only another has can be noted first and added then.
          </Trans>
        </p>
      </Notice>
      <SideBySideSheets
        sheets={props.versions.map(({ draft }, index) => sheetOfDraft(titles[index] ?? '', draft))}
      />
      <p className="row">
        {props.versions.map(({ draft, edit }, index) => (
          <button key={edit} type="button" className="button" onClick={() => props.onChoose(draft)}>
            {goOnWith(index + 1)}
          </button>
        ))}
      </p>
    </div>
  );
}

function versionAt(version: number, time: string): string {
  return t`Version ${version}, ${time}`;
}

function goOnWith(version: number): string {
  return t`Go on with version ${version}`;
}
