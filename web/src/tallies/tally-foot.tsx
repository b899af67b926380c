import type { ReactNode } from 'react';
import { birds, countOf } from '../ui/words.js';
import { runningTotal } from './draft.js';
import { UndoButtons, type UndoProps } from './undo-buttons.js';

/** The running count and the main acts, at the bottom of the screen where a thumb reaches them. */
export function TallyFoot(props: {
  readonly undo: UndoProps;
  readonly onAdd: () => void;
  readonly onLookOver: () => void;
}): ReactNode {
  const { draft } = props.undo;
  const total = runningTotal(draft);
  return (
    <div className="tally-foot">
      <div className="foot-acts foot-total">
        <p>
          <strong className="tally-total">{birds(total.using)}</strong>{' '}
          {total.using === 1 ? 'bird' : 'birds'}
          {total.flyingThrough > 0 ? `, ${birds(total.flyingThrough)} flying through` : ''}
          <span className="soft"> · {countOf(draft.lines.length, 'line')}</span>
        </p>
        <UndoButtons {...props.undo} />
      </div>
      <div className="foot-acts">
        <button type="button" className="button" onClick={props.onAdd}>
          Next bird
        </button>
        <button type="button" className="button" data-kind="main" onClick={props.onLookOver}>
          Look over and send
        </button>
      </div>
    </div>
  );
}
