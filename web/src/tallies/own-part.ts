import { useEffect, useMemo, useState } from 'react';
import { useQuery, type CombinedError } from 'urql';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { useLate } from '../ui/late.js';
import { MyAssignments } from './documents.js';
import { keepOwnPart, useKeptOwnParts } from './kept-count.js';
import type { OwnPart } from './kept-tables.js';

export type { OwnPart } from './kept-tables.js';
export type Assignment = OwnPart['assignments'][number];

/**
 * This observer's part of the count: fresh if the server answers, else as it was kept on the phone.
 * A server that does not answer soon is not waited for; what it says later takes the place of what
 * was kept.
 */
export function useOwnPart(
  countId: string,
  personId: string,
): {
  readonly data: OwnPart | undefined;
  readonly error: CombinedError | undefined;
  readonly again: () => void;
} {
  const [result, ask] = useQuery({
    query: MyAssignments,
    variables: { id: countId },
    context: useMemo(() => ({ additionalTypenames: ['Tally', 'ObserverQuery', 'Assignment'] }), []),
  });
  const fresh = result.data?.count;
  const answeredTo = result.data?.me?.id;
  useEffect(() => {
    // Somebody else may have signed in from another tab: theirs is not kept under this name.
    if (fresh !== undefined && answeredTo === personId) void keepOwnPart(personId, fresh);
  }, [fresh, answeredTo, personId]);
  const isOutOfRange = result.error?.networkError !== undefined;
  const isLate = useLate(fresh === undefined && result.error === undefined);
  // Once it is needed it stays, also while the server is asked again: the form must not be taken
  // from under anybody's thumb.
  const [isNeeded, setNeeded] = useState(false);
  if ((isOutOfRange || isLate) && !isNeeded) setNeeded(true);
  const keptParts = useKeptOwnParts(personId, fresh === undefined && isNeeded);
  const kept = keptParts?.find(({ id }) => id === countId);
  const again = useMemo(() => () => ask({ requestPolicy: 'network-only' }), [ask]);
  // Out of range, what is kept is looked for before anything is said to be missing.
  const isLooking = fresh === undefined && isOutOfRange && keptParts === null;
  return {
    data: fresh ?? kept,
    // With something kept, being out of range is no trouble: the frame says it already.
    error: isOutOfRange && (isLooking || (fresh ?? kept)) ? undefined : result.error,
    again,
  };
}

/** The newest version of the tally for an assignment: same window, same sections. */
export function tallyFor(assignment: Assignment, count: OwnPart): OwnTallyFragment | null {
  const wanted = assignment.sections
    .map(({ id }) => id)
    .sort()
    .join('+');
  const own = count.myTallies.filter(
    (tally) =>
      tally.window.id === assignment.window.id &&
      tally.sections
        .map(({ id }) => id)
        .sort()
        .join('+') === wanted,
  );
  return own.reduce<OwnTallyFragment | null>(
    (newest, tally) => (newest === null || tally.version > newest.version ? tally : newest),
    null,
  );
}
