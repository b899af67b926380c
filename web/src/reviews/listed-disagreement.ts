import type { DisagreementListQuery } from '../graphql/generated/graphql.js';

export type ListedDisagreement = DisagreementListQuery['count']['review']['disagreements'][number];

/** Cached answers that name any of these are asked for anew when one of them changes. */
export const reviewTypes = ['Ruling', 'Review', 'ObserverQuery', 'Tally', 'Disagreement', 'Link'];
