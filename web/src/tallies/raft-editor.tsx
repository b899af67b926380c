import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { TotalMethod } from '../../../server/core/model/snapshot.js';
import { sentenceCase } from '../ui/words.js';
import { Choice } from './choice.js';
import { wholeNumber } from './draft.js';
import { NumberField } from './number-field.js';
import { RaftCompositionPart } from './raft-composition.js';
import type { DraftRaft } from './raft.js';
import { birdsOf, compositionOf } from './raft-draft.js';
import { RaftScan } from './raft-scan.js';
import type { Label } from '../ui/said.js';

const methods: readonly { readonly value: TotalMethod; readonly label: Label }[] = [
  { value: 'block', label: msg`In blocks` },
  { value: 'one-by-one', label: msg`One by one` },
  { value: 'guess', label: msg`Guess` },
];

/** One mixed raft: its total, its scan samples, what that makes of it, and the way into the lines. */
export function RaftEditor(props: {
  readonly raft: DraftRaft;
  readonly recent: readonly string[];
  readonly onChange: (raft: DraftRaft) => void;
  readonly onMakeLines: () => void;
  readonly onLater: () => void;
  readonly onRemove: () => void;
}): ReactNode {
  const { raft, onChange } = props;
  const [isAsked, setAsked] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'start' });
  }, []);
  const composition = useMemo(() => compositionOf(raft), [raft]);
  const lines = useMemo(() => birdsOf(raft), [raft]);
  const set = (change: Partial<DraftRaft>): void => onChange({ ...raft, ...change });
  const hasTotal = (wholeNumber(raft.total) ?? 0) > 0;
  const hasBlock = raft.block.trim() === '' || (wholeNumber(raft.block) ?? 0) > 0;

  return (
    <section className="line-editor stack" aria-labelledby={`raft-${raft.id}`}>
      <h2 id={`raft-${raft.id}`} ref={heading} tabIndex={-1}>
        {sentenceCase(raft.label)}
      </h2>
      <NumberField
        label={t`Birds in the whole raft`}
        value={raft.total}
        fault={
          isAsked && !hasTotal
            ? t`Give the birds of the whole raft, such as 500. Its shares alone make no lines.`
            : undefined
        }
        onChange={(total) => set({ total })}
      />
      <Choice
        legend={t`How the whole was counted`}
        isShort
        value={raft.method}
        options={methods}
        onChange={(method) => set({ method })}
      />
      {raft.method === 'block' ? (
        <NumberField
          label={t`Birds in one block, if you kept to one size`}
          value={raft.block}
          fault={
            hasBlock ? undefined : t`Give the birds in one block, such as 50, or leave it empty.`
          }
          onChange={(block) => set({ block })}
        />
      ) : null}
      <RaftScan raft={raft} recent={props.recent} onChange={onChange} />
      {composition === null ? null : (
        <RaftCompositionPart composition={composition} lines={lines} />
      )}
      {isAsked && composition === null ? (
        <p className="field-fault">
          <Trans>Scan some birds first: nothing says yet what the raft is made of.</Trans>
        </p>
      ) : null}
      {composition !== null && hasTotal && composition.scanned > (wholeNumber(raft.total) ?? 0) ? (
        <p className="field-fault">
          <Trans>
            More birds were scanned than the raft has. If samples overlap that may be right;
            otherwise look at the total again.
          </Trans>
        </p>
      ) : null}
      <div>
        <button type="button" className="button" data-kind="quiet" onClick={props.onRemove}>
          <Trans>Remove this raft</Trans>
        </button>
      </div>
      <div className="tally-foot">
        <button type="button" className="button" onClick={props.onLater}>
          <Trans>Go on later</Trans>
        </button>
        <button
          type="button"
          className="button"
          data-kind="main"
          onClick={() => {
            setAsked(true);
            if (lines !== null && hasBlock) props.onMakeLines();
          }}
        >
          <Trans>Turn into tally lines</Trans>
        </button>
      </div>
    </section>
  );
}
