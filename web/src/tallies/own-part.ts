import { useEffect, useMemo } from 'react';
import { useQuery, type CombinedError } from 'urql';
import type { MyAssignmentsQuery, OwnTallyFragment } from '../graphql/generated/graphql.js';
import { MyAssignments } from './documents.js';
import { keepOwnPart, keptOwnPart } from './kept-count.js';

export type OwnPart = MyAssignmentsQuery['count'];
export type Assignment = OwnPart['assignments'][number];

/**
 * This observer's part of the count: fresh if the server answers, else as it was kept on the phone.
 */
export function useOwnPart(
  countId: string,
  personId: string,
): {
  readonly data: OwnPart | undefined;
  readonly error: CombinedError | undefined;
  readonly again: () => void;
} {
  const [result, again] = useQuery({
    query: MyAssignments,
    variables: { id: countId },
    context: useMemo(() => ({ additionalTypenames: ['Tally', 'ObserverQuery', 'Assignment'] }), []),
  });
  const fresh = result.data?.count;
  useEffect(() => {
    if (fresh !== undefined) keepOwnPart(personId, fresh);
  }, [fresh, personId]);
  const isOutOfRange = result.error?.networkError !== undefined;
  const kept = useMemo(
    () => (fresh === undefined && isOutOfRange ? keptOwnPart(personId, countId) : null),
    [fresh, isOutOfRange, personId, countId],
  );
  return {
    data: fresh ?? kept ?? undefined,
    // With something kept, being out of range is no trouble: the frame says it already.
    error: isOutOfRange && (fresh ?? kept) ? undefined : result.error,
    again: () => again({ requestPolicy: 'network-only' }),
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
