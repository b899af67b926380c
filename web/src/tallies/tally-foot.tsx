import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { usePainted } from '../ui/first-paint.js';
import { birds } from '../ui/words.js';
import { runningTotal } from './draft.js';
import { UndoButtons, type UndoProps } from './undo-buttons.js';
import { countedLines } from '../ui/counted.js';

/** The running count and the main acts, at the bottom of the screen where a thumb reaches them. */
export function TallyFoot(props: {
  readonly undo: UndoProps;
  readonly onAdd: () => void;
  readonly onLookOver: () => void;
}): ReactNode {
  const { draft } = props.undo;
  const total = runningTotal(draft);
  const isPainted = usePainted();
  return (
    <div className="tally-foot">
      <div className="foot-acts foot-total">
        <p>
          <strong className="tally-total">{birds(total.using)}</strong>{' '}
          {isPainted ? <TotalWords total={total} lines={draft.lines.length} /> : null}
        </p>
        <UndoButtons {...props.undo} />
      </div>
      <div className="foot-acts">
        <button type="button" className="button" onClick={props.onAdd}>
          <Trans>Next bird</Trans>
        </button>
        <button type="button" className="button" data-kind="main" onClick={props.onLookOver}>
          <Trans>Look over and send</Trans>
        </button>
      </div>
    </div>
  );
}

function TotalWords(props: {
  readonly total: ReturnType<typeof runningTotal>;
  readonly lines: number;
}): ReactNode {
  const { using, flyingThrough: flying } = props.total;
  const word = plural(using, { one: 'bird', other: 'birds' });
  return (
    <>
      {word}
      {flying > 0 ? `, ${flyingThrough(birds(flying))}` : ''}
      <span className="soft"> · {countedLines(props.lines)}</span>
    </>
  );
}

function flyingThrough(birdsFlying: string): string {
  return t`${birdsFlying} flying through`;
}
