import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { Trouble } from '../graphql/trouble.js';
import { FaultList } from './fault-list.js';

type NoticeKind = 'refused' | 'offline' | 'done' | 'caution' | 'plain';

/** A short message in place: what happened, why, what to do. */
export function Notice(props: {
  readonly kind: NoticeKind;
  readonly title?: string;
  readonly children?: ReactNode;
}): ReactNode {
  // Trouble is read out as it appears; what went well is announced by whoever did it.
  const role = props.kind === 'refused' || props.kind === 'offline' ? 'alert' : undefined;
  return (
    <div className="notice stack-tight" data-kind={props.kind} role={role}>
      {props.title === undefined ? null : (
        <p>
          <strong>{props.title}</strong>
        </p>
      )}
      {props.children}
    </div>
  );
}

/** Something did not work. Offline, refused and failed look and read differently. */
export function TroubleNotice(props: {
  readonly trouble: Trouble;
  readonly retry?: () => void;
}): ReactNode {
  const { trouble, retry } = props;
  if (trouble.kind === 'offline') {
    return (
      <Notice kind="offline" title={t`No connection.`}>
        <p>
          <Trans>
            The server could not be reached, so nothing was changed. Try again when you are back in
            range.
          </Trans>
        </p>
        <Retry retry={retry} />
      </Notice>
    );
  }
  if (trouble.kind === 'failed') {
    return (
      <Notice kind="refused" title={t`Something went wrong on the server.`}>
        <p>
          <Trans>
            Nothing was changed. Try again; if it happens again, tell whoever runs this server what
            you did.
          </Trans>
        </p>
        <Retry retry={retry} />
      </Notice>
    );
  }
  return (
    <Notice kind="refused" title={trouble.message}>
      {trouble.faults.length === 0 ? null : <FaultList faults={trouble.faults} />}
      {trouble.code === 'NOT_SIGNED_IN' ? (
        <p>
          <a href="/sign-in">
            <Trans>Sign in again</Trans>
          </a>
        </p>
      ) : null}
    </Notice>
  );
}

function Retry(props: { readonly retry: (() => void) | undefined }): ReactNode {
  if (props.retry === undefined) return null;
  return (
    <p>
      <button type="button" className="button" onClick={props.retry}>
        <Trans>Try again</Trans>
      </button>
    </p>
  );
}
