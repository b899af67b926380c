import type * as Api from '../api/generated/schema.js';
import type { Disagreement } from '../core/model/result.js';
import { saidIn } from '../core/model/saying.js';
import type { QueryRecord } from '../database/query-rows.js';
import { permissions } from '../people/policy.js';
import type { CountAccess } from '../plans/count-access.js';
import { personView } from '../plans/plan.view.js';
import { aboutAgain } from './query-about.js';

/**
 * A query as this person may see it: whoever may not see the review reads only of their own lines.
 *
 * @param disagreement the one that it is about, where the review is at hand
 */
export function queryView(
  access: CountAccess,
  query: QueryRecord,
  disagreement: Disagreement | null = null,
): Api.ObserverQuery {
  const mayReview = permissions('REVIEW', access.roles, access.state).size > 0;
  return {
    id: query.id,
    countId: query.countId,
    disagreementId: mayReview ? query.disagreement : null,
    about: saidIn(
      mayReview
        ? aboutAgain(query.about, disagreement?.text ?? null)
        : aboutAgain(query.aboutForAsked, null),
      access.viewer.wording,
    ),
    askedBy: personView(access.record, query.askedBy),
    to: personView(access.record, query.to),
    question: query.question,
    askedAt: query.askedAt,
    answer: query.answer?.text ?? null,
    answeredAt: query.answer?.at ?? null,
  };
}
