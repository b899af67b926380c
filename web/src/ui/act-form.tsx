import type { ReactNode } from 'react';
import type { Trouble } from '../graphql/trouble.js';
import { TroubleNotice } from './notice.js';

/** A form that does one act; what stood in its way the last time is told on top. */
export function ActForm(props: {
  readonly trouble: Trouble | null;
  readonly act: () => Promise<void>;
  readonly children: ReactNode;
}): ReactNode {
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        void props.act();
      }}
    >
      {props.trouble === null ? null : <TroubleNotice trouble={props.trouble} />}
      {props.children}
    </form>
  );
}
