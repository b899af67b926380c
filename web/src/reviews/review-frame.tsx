import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import { SignOffPanel } from '../seals/sign-off-panel.js';

/** The two columns of every review page: the matter on the left, what to do about it on the right. */
export function ReviewFrame(props: {
  readonly countId: string;
  readonly children: ReactNode;
  /** Comes below the sign-off. */
  readonly act?: ReactNode;
}): ReactNode {
  return (
    <div className="desk">
      <div className="desk-main stack">{props.children}</div>
      <aside className="desk-side stack not-printed" aria-label={t`What to do`}>
        <SignOffPanel countId={props.countId} />
        {props.act}
      </aside>
    </div>
  );
}
