import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import { birds, sentenceCase } from '../ui/words.js';
import type { DraftFault } from './draft-faults.js';
import { wholeNumber, type Draft } from './draft.js';
import {
  birdsOf,
  emptyRaft,
  isLineOf,
  raftField,
  stateOf,
  withoutRaft,
  withRaft,
  withRaftLines,
} from './raft-draft.js';
import type { DraftRaft } from './raft.js';
import { countedLines, countedSamples } from '../ui/counted.js';
import { RaftEditor } from './later-parts.js';

export interface RemovedRaft {
  readonly before: Draft;
  readonly raft: DraftRaft;
}

/** The mixed rafts of a tally: start one, go on with one. An open one is shown alone. */
export function RaftPart(props: {
  readonly draft: Draft;
  readonly faults: readonly DraftFault[];
  readonly openId: string | null;
  readonly onOpen: (raftId: string | null) => void;
  /** The draft as it was before a raft was removed, while that can be undone. */
  readonly removed: RemovedRaft | null;
  readonly onRemoved: (removed: RemovedRaft | null) => void;
  readonly onChange: (draft: Draft) => void;
}): ReactNode {
  const { draft, openId, onOpen, removed, onChange } = props;
  const announce = useAnnounce();
  const open = draft.rafts.find(({ id }) => id === openId);

  if (open !== undefined) {
    return (
      <RaftEditor
        key={open.id}
        raft={open}
        recent={[...draft.lines].reverse().map(({ taxon }) => taxon)}
        onChange={(raft) => {
          // Lines that say what the raft says go on doing so.
          const follow = stateOf(draft, open) === 'in-lines' && birdsOf(raft) !== null;
          onChange(follow ? withRaftLines(draft, raft) : withRaft(draft, raft));
        }}
        onMakeLines={() => {
          const next = withRaftLines(draft, open);
          onChange(next);
          onOpen(null);
          const lines = next.lines.filter((line) => isLineOf(open, line)).length;
          const raft = sentenceCase(open.label);
          const made = countedLines(lines);
          announce(t`${raft} is in the tally as ${made}.`);
        }}
        onLater={() => onOpen(null)}
        onRemove={() => {
          props.onRemoved({ before: draft, raft: open });
          onChange(withoutRaft(draft, open));
          onOpen(null);
          announce(`${sentenceCase(open.label)} removed.`);
        }}
      />
    );
  }
  return (
    <section className="stack" aria-labelledby="rafts-heading">
      <h2 id="rafts-heading">
        <Trans>Mixed rafts</Trans>
      </h2>
      <p className="hint">
        <Trans>
          For a raft of several species that is too large to name bird by bird: its total, and small
          counts inside it, become tally lines.
        </Trans>
      </p>
      {draft.rafts.length === 0 ? null : (
        <ul className="plain-list tally-lines">
          {draft.rafts.map((raft) => (
            <RaftItem
              key={raft.id}
              draft={draft}
              raft={raft}
              faults={props.faults}
              onOpen={() => onOpen(raft.id)}
            />
          ))}
        </ul>
      )}
      {removed === null ? null : (
        <p className="row">
          <span>{wasRemoved(sentenceCase(removed.raft.label))}</span>
          <button
            type="button"
            className="button"
            onClick={() => {
              // Only the raft and its lines come back: what was changed since stays.
              const { before, raft } = removed;
              const lines = before.lines.filter((line) => isLineOf(raft, line));
              onChange({ ...withRaft(draft, raft), lines: [...draft.lines, ...lines] });
              props.onRemoved(null);
            }}
          >
            <Trans>Put it back</Trans>
          </button>
        </p>
      )}
      <div>
        <button
          type="button"
          className="button"
          onClick={() => {
            const raft = emptyRaft(draft);
            props.onRemoved(null);
            onChange(withRaft(draft, raft));
            onOpen(raft.id);
          }}
        >
          <Trans>Start a mixed raft</Trans>
        </button>
      </div>
    </section>
  );
}

function RaftItem(props: {
  readonly draft: Draft;
  readonly raft: DraftRaft;
  readonly faults: readonly DraftFault[];
  readonly onOpen: () => void;
}): ReactNode {
  const { draft, raft } = props;
  const own = props.faults.filter(
    ({ lineId, field }) => lineId === null && field === raftField(raft),
  );
  const total = wholeNumber(raft.total);
  const samples = raft.samples.filter((sample) => sample.length > 0).length;
  const state = {
    'no-lines': t`not in the tally lines yet`,
    'in-lines': t`in the tally lines`,
    changed: t`in lines that were changed since`,
  }[stateOf(draft, raft)];
  return (
    <li data-at-fault={own.length > 0}>
      <button type="button" className="tally-line" onClick={props.onOpen}>
        <span>
          {sentenceCase(raft.label)}
          <span className="soft small tally-line-details">
            {countedSamples(samples)}, {state}
          </span>
        </span>
        <span className="number">{total === null ? '–' : birds(total)}</span>
        <span className="for-readers">
          . <Trans>Change this raft</Trans>
        </span>
      </button>
      {own.map(({ sentence }) => (
        <p key={sentence} className="field-fault">
          {sentence}
        </p>
      ))}
    </li>
  );
}

function wasRemoved(raft: string): string {
  return t`${raft} was removed, with its lines.`;
}
