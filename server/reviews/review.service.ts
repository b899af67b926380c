import { Injectable } from '@nestjs/common';
import type * as Api from '../api/generated/schema.js';
import { Refusal } from '../core/refusal.js';
import { Database } from '../database/database.js';
import type { Viewer } from '../people/viewer.js';
import { allowedIn, openCount, type CountAccess } from '../plans/count-access.js';
import { ownAgreementView } from './agreement.view.js';
import { loadReview, type LoadedReview } from './loaded-review.js';
import { reviewView, type ReviewView } from './review.view.js';
import { storeResult } from './stored-result.js';
import { say } from '../core/model/saying.js';

@Injectable()
export class ReviewService {
  constructor(private readonly database: Database) {}

  /** @throws Refusal NOT_SIGNED_IN, NOT_FOUND, NOT_ALLOWED, NOT_NOW */
  async reconcile(viewer: Viewer | null, countId: string): Promise<ReviewView> {
    return this.review(await openCount(this.database.read, viewer, countId));
  }

  /** The review as this person may see it. */
  async review(access: CountAccess): Promise<ReviewView> {
    return reviewView(await this.load(access));
  }

  /**
   * How an observer agrees with those who counted the same.
   *
   * @throws Refusal NOT_ALLOWED, NOT_NOW
   */
  async ownAgreement(access: CountAccess): Promise<Api.OwnAgreement> {
    allowedIn(access, 'SEE_OWN_AGREEMENT');
    return ownAgreementView(await loadReview(this.database.read, access));
  }

  /**
   * Loads the review and keeps its result, so that the next look is a look-up.
   *
   * @throws Refusal NOT_ALLOWED, NOT_NOW
   */
  async load(access: CountAccess): Promise<LoadedReview> {
    allowedIn(access, 'REVIEW');
    const review = await loadReview(this.database.read, access);
    if (!review.reconciled.isStored) {
      await this.database.write(async (transaction) => {
        await storeResult(transaction, review.reconciled);
        return { value: undefined, entries: [] };
      });
    }
    return review;
  }

  /** Those of a kind, of a cell, or both. */
  disagreements(
    review: ReviewView,
    { kind, cell }: Api.ReviewDisagreementsArgs,
  ): readonly Api.Disagreement[] {
    return review.disagreements.filter(
      (one) => (!kind || one.kind === kind) && (!cell || one.cell?.id === cell),
    );
  }

  /** @throws Refusal NOT_FOUND */
  disagreement(review: ReviewView, id: string): Api.Disagreement {
    const found = review.disagreements.find((one) => one.id === id);
    if (found !== undefined) return found;
    throw new Refusal(
      'NOT_FOUND',
      say(
        'There is no disagreement {id} in this review any more: the tallies have changed, or you still owe a tally there.',
        { id },
      ),
    );
  }
}
