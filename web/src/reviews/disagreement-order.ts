import type { RulingState, Severity } from '../graphql/generated/graphql.js';

/** What ordering and filtering need to know of a disagreement. */
export interface Orderable {
  readonly id: string;
  readonly kind: string;
  readonly severity: Severity;
  readonly birds: number;
  readonly cell?: { readonly id: string } | null | undefined;
  readonly group?: { readonly id: string } | null | undefined;
  readonly link?: { readonly id: string } | null | undefined;
  readonly ruling?: { readonly state: RulingState } | null | undefined;
}

export interface Filter {
  readonly severity: Severity | 'any';
  readonly kind: string;
  readonly cell: string;
  readonly showSettled: boolean;
}

export const noFilter: Filter = { severity: 'any', kind: 'any', cell: 'any', showSettled: false };

const severities: readonly Severity[] = ['SERIOUS', 'QUESTIONED', 'NOTE'];

/** Settled: a ruling on it is applied. One that waits for a second person, or went stale, does not settle. */
export function isSettled(disagreement: Pick<Orderable, 'ruling'>): boolean {
  return disagreement.ruling?.state === 'APPLIED';
}

/** Something to rule on. The rest, such as a missing second count, is to be known, not settled. */
export function isForRuling(disagreement: Pick<Orderable, 'group' | 'link'>): boolean {
  return Boolean(disagreement.group ?? disagreement.link);
}

/** What is still to be done. */
export function isOpen(disagreement: Pick<Orderable, 'group' | 'link' | 'ruling'>): boolean {
  return isForRuling(disagreement) && !isSettled(disagreement);
}

/** Open ones, then what is only to be known, then what is settled. */
function turn(disagreement: Orderable): number {
  if (isSettled(disagreement)) return 2;
  return isForRuling(disagreement) ? 0 : 1;
}

/**
 * The order of work: what is open before what is not, most birds at stake first, then the more
 * severe; the id decides between equals, so that the list never shuffles.
 */
export function inOrderOfWork<One extends Orderable>(
  disagreements: readonly One[],
): readonly One[] {
  return [...disagreements].sort(
    (one, other) =>
      turn(one) - turn(other) ||
      other.birds - one.birds ||
      severities.indexOf(one.severity) - severities.indexOf(other.severity) ||
      (one.id < other.id ? -1 : one.id > other.id ? 1 : 0),
  );
}

export function matching<One extends Orderable>(
  disagreements: readonly One[],
  filter: Filter,
): readonly One[] {
  return disagreements.filter(
    (one) =>
      (filter.showSettled || !isSettled(one)) &&
      (filter.severity === 'any' || one.severity === filter.severity) &&
      (filter.kind === 'any' || one.kind === filter.kind) &&
      (filter.cell === 'any' || one.cell?.id === filter.cell),
  );
}
