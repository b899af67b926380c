import { plural } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useState, type ReactNode } from 'react';
import { Notice } from '../ui/notice.js';
import { watchKept } from './kept-database.js';

/**
 * Says to whoever is signed out that tallies on this phone wait for their observer. A phone whose
 * battery went flat may have forgotten who was signed in.
 */
export function TalliesThatWait(): ReactNode {
  const [waiting, setWaiting] = useState(0);
  useEffect(
    () =>
      watchKept(
        (database) => database.outbox.filter(({ state }) => state.kind !== 'received').count(),
        setWaiting,
        () => setWaiting(0),
      ),
    [],
  );
  if (waiting === 0) return null;
  return (
    <Notice
      kind="caution"
      title={plural(waiting, {
        one: '# tally on this phone was not sent yet.',
        other: '# tallies on this phone were not sent yet.',
      })}
    >
      <p>
        <Trans>
          Nothing is lost: open your invite link again, or sign in, and it goes by itself.
        </Trans>
      </p>
    </Notice>
  );
}
