import type { DisagreementListQuery } from '../graphql/generated/graphql.js';

export type ListedDisagreement = DisagreementListQuery['count']['review']['disagreements'][number];

/** Context of a query or an act: cached answers that name any of these are asked for anew. */
export const ofReviews = {
  additionalTypenames: ['Ruling', 'Review', 'ObserverQuery', 'Tally', 'Disagreement', 'Link'],
};
