import type { ReactNode } from 'react';
import type { CombinedError } from 'urql';
import { readTrouble } from '../graphql/trouble.js';
import { TroubleNotice } from './notice.js';

/**
 * What a query gave: the content once there is some, else a skeleton that keeps its room, else the
 * trouble. Older content stays on the page under a notice when a newer look at it failed.
 */
export function Answer<Data>(props: {
  readonly result: { readonly data?: Data | undefined; readonly error?: CombinedError | undefined };
  readonly skeleton: ReactNode;
  readonly retry?: () => void;
  readonly children: (data: Data) => ReactNode;
}): ReactNode {
  const { data, error } = props.result;
  const notice =
    error === undefined ? null : (
      <TroubleNotice
        trouble={readTrouble(error)}
        {...(props.retry ? { retry: props.retry } : {})}
      />
    );
  if (data === undefined || data === null) return notice ?? props.skeleton;
  return (
    <>
      {notice}
      {props.children(data)}
    </>
  );
}
