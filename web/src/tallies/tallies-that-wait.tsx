import { useEffect, useState, type ReactNode } from 'react';
import { Notice } from '../ui/notice.js';
import { countOf } from '../ui/words.js';
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
      title={`${countOf(waiting, 'tally', 'tallies')} on this phone ${waiting === 1 ? 'was' : 'were'} not sent yet.`}
    >
      <p>Nothing is lost: open your invite link again, or sign in, and it goes by itself.</p>
    </Notice>
  );
}
