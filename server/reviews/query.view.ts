import type * as Api from '../api/generated/schema.js';
import type { QueryRecord } from '../database/query-rows.js';
import { permissions } from '../people/policy.js';
import type { CountAccess } from '../plans/count-access.js';
import { personView } from '../plans/plan.view.js';

/** A query as this person may see it: whoever may not see the review reads only of their own lines. */
export function queryView(access: CountAccess, query: QueryRecord): Api.ObserverQuery {
  const mayReview = permissions('REVIEW', access.roles, access.state).size > 0;
  return {
    id: query.id,
    countId: query.countId,
    disagreementId: mayReview ? query.disagreement : null,
    about: mayReview ? query.about : query.aboutForAsked,
    askedBy: personView(access.record, query.askedBy),
    to: personView(access.record, query.to),
    question: query.question,
    askedAt: query.askedAt,
    answer: query.answer?.text ?? null,
    answeredAt: query.answer?.at ?? null,
  };
}
