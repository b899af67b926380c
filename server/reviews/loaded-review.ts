import type { Result } from '../core/model/result.js';
import { Refusal } from '../core/refusal.js';
import { loadQueries, type QueryRecord } from '../database/query-rows.js';
import { loadRulings, type RulingRecord } from '../database/ruling-rows.js';
import type { Source, Transaction } from '../database/source.js';
import { loadTallies, type TallyVersion } from '../database/tally-rows.js';
import { isHidden, type CountAccess } from '../plans/count-access.js';
import { currentTallies } from '../tallies/blindness.js';
import { reviewInput, type ReviewInput } from './review-input.js';
import { reconcileAndKeep, reconcileOnce, type Reconciled } from './stored-result.js';
import { say } from '../core/model/saying.js';

/** All that one reviewer may see of a count, and what the engine makes of exactly that. */
export interface LoadedReview {
  readonly access: CountAccess;
  /** Current tallies. */
  readonly tallies: readonly TallyVersion[];
  /** In force or not. */
  readonly rulings: readonly RulingRecord[];
  readonly queries: readonly QueryRecord[];
  readonly input: ReviewInput;
  readonly reconciled: Reconciled;
  readonly result: Result;
}

/**
 * Loads a review as one person may see it. Whoever still owes a tally of a cell gets a review that
 * was worked out without that cell: nothing computed from what they may not see can reach them.
 */
export function loadReview(source: Source, access: CountAccess): Promise<LoadedReview> {
  return load(source, access, (input) => reconcileOnce(source, input));
}

/** The same inside a transaction, so that what was worked out there is a look-up afterwards. */
export function loadReviewWithin(
  transaction: Transaction,
  access: CountAccess,
): Promise<LoadedReview> {
  return load(transaction, access, (input) => reconcileAndKeep(transaction, input));
}

async function load(
  source: Source,
  access: CountAccess,
  reconciledFrom: (input: ReviewInput) => Promise<Reconciled>,
): Promise<LoadedReview> {
  const { record } = access;
  const hidden = new Set(
    record.tallies.filter((tally) => isHidden(access, tally)).map(({ id }) => id),
  );
  const isVisible = ({ tallies }: { readonly tallies: readonly string[] }): boolean =>
    tallies.every((id) => !hidden.has(id));
  const versions = await loadTallies(source, record.id);
  const tallies = currentTallies(versions).filter(({ id }) => !hidden.has(id));
  const rulings = (await loadRulings(source, record.id)).filter(isVisible);
  const queries = (await loadQueries(source, { countId: record.id })).filter(isVisible);
  const input = reviewInput(record, tallies, rulings);
  const reconciled = await reconciledFrom(input);
  return { access, tallies, rulings, queries, input, reconciled, result: reconciled.result };
}

/**
 * The ids of the tallies in some cells.
 *
 * @throws Refusal NOT_FOUND if a cell is not there
 */
export function talliesOfCells(review: LoadedReview, cells: readonly string[]): readonly string[] {
  const found = cells.map((id) => {
    const cell = review.result.cells.find((one) => one.id === id);
    if (cell === undefined)
      throw new Refusal('NOT_FOUND', say('There is no cell {id} in this review.', { id }));
    return cell;
  });
  const ids = found.flatMap(({ tallies }) => tallies.flatMap(({ tally }) => tally.split('+')));
  return [...new Set(ids)].sort();
}
