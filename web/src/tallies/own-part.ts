import { useEffect, useMemo } from 'react';
import { useQuery, type CombinedError } from 'urql';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { MyAssignments } from './documents.js';
import type { OwnPart } from './kept-tables.js';
import { keepOwnPart } from './own-part-store.js';
import { useKeptOwnParts } from './use-kept.js';

export type { OwnPart } from './kept-tables.js';
export type Assignment = OwnPart['assignments'][number];

/**
 * This observer's part of the count: as it is kept on the phone, at once, until the server has
 * answered. Nobody waits for a network that may not be there.
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
  const keptParts = useKeptOwnParts(personId, fresh === undefined);
  // A server that refuses has the last word; what is kept is for when it says nothing.
  const isRefused = result.error !== undefined && !isOutOfRange;
  const kept = isRefused ? undefined : keptParts?.find(({ id }) => id === countId);
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
