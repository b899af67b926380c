import type * as Api from '../api/generated/schema.js';
import { nameOf } from '../plans/count-access.js';
import { saidIn, together } from '../core/model/saying.js';
import type { LoadedReview } from './loaded-review.js';

/** Observers who together cover a place stand as ids joined by +. */
export function namesOf({ access }: LoadedReview, ids: string): string {
  const names = ids.split('+').map((id) => nameOf(access.record, id));
  return saidIn(together(names), access.viewer.wording);
}

export function peopleView(review: LoadedReview, ids: string): Api.Person {
  return { id: ids, name: namesOf(review, ids) };
}
