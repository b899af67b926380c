import type {
  CountAgreementQuery,
  MeasuresFragment,
  OwnAgreementQuery,
  PairPartsFragment,
  StatisticPartsFragment,
} from '../../web/src/graphql/generated/graphql.js';
import type { Answers } from './fake-server.js';

export type Agreement = CountAgreementQuery['count']['review']['agreement'];
type Own = OwnAgreementQuery['count']['ownAgreement'];

export const ingrid = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' } as const;
export const tom = { __typename: 'Person', id: 'o2', name: 'Tom Reed' } as const;

export function statistic(
  value: number | null,
  low: number | null = null,
  high: number | null = null,
  n = 12,
): StatisticPartsFragment {
  return { value, low, high, n };
}

export const tooFew = statistic(null, null, null, 3);

export function measures(change: Partial<MeasuresFragment> = {}): MeasuresFragment {
  return {
    percentAgreement: statistic(0.8, 0.7, 0.9),
    brayCurtisSimilarity: statistic(0.95, 0.9, 0.98),
    concordance: statistic(0.99, 0.97, 1),
    withinTolerance: statistic(0.75, 0.5, 0.9),
    alpha: statistic(0.85, 0.6, 0.95),
    kappa: statistic(0.7, 0.5, 0.9),
    weightedKappa: statistic(0.82, 0.6, 0.95),
    adjustedKappa: statistic(0.78, 0.6, 0.9),
    ...change,
  };
}

/** Ingrid and Tom: twelve groups compared, two of them seen by both and drawn here. */
export function pair(change: Partial<PairPartsFragment> = {}): PairPartsFragment {
  return {
    a: ingrid,
    b: tom,
    measures: measures({ percentAgreement: statistic(0.8, 0.7, 0.9, 3) }),
    ratios: {
      points: [
        point('g1', ['Aythya affinis', 'Aythya affinis/marila', 'Aythya marila'], 440, 400),
        point('g2', ['Anas rubripes'], 12, 6),
      ],
      meanRatio: statistic(1.2, 1.05, 1.4),
      lower: statistic(0.8, 0.7, 0.88),
      upper: statistic(2.4, 2, 3.1),
    },
    confusion: {
      taxa: ['Anas rubripes', 'Aythya affinis', 'Aythya affinis/marila', 'Aythya marila'],
      entries: [
        { a: null, b: 'Aythya marila', number: 40 },
        { a: 'Anas rubripes', b: 'Anas rubripes', number: 6 },
        { a: 'Anas rubripes', b: null, number: 6 },
        { a: 'Aythya affinis', b: 'Aythya affinis', number: 10 },
        { a: 'Aythya affinis', b: 'Aythya affinis/marila', number: 20 },
        { a: 'Aythya affinis', b: 'Aythya marila', number: 10 },
        { a: 'Aythya marila', b: 'Aythya marila', number: 300 },
      ],
    },
    sensitivities: [
      {
        taxon: 'Aythya marila',
        byA: 300,
        byB: 310,
        byBoth: 300,
        ofA: statistic(0.97, 0.9, 1),
        ofB: statistic(1, 0.8, 1),
      },
    ],
    ...change,
  };
}

function point(
  group: string,
  taxa: readonly string[],
  a: number,
  b: number,
): PairPartsFragment['ratios']['points'][number] {
  return { cell: 's1:w1', group, taxa: [...taxa], a, b, mean: Math.sqrt(a * b), ratio: a / b };
}

/** As a leader sees it. */
export function agreement(change: Partial<Agreement> = {}): Agreement {
  return {
    minimumUnits: 5,
    overall: measures(),
    byPair: [pair()],
    byTaxon: [
      {
        taxon: 'Aythya marila',
        percentAgreement: tooFew,
        brayCurtisSimilarity: tooFew,
        concordance: tooFew,
        withinTolerance: tooFew,
        alpha: tooFew,
        sensitivity: tooFew,
      },
    ],
    bySection: [
      { sections: [{ id: 's1', name: 'North Bay' }], measures: measures() },
      {
        sections: [{ id: 's2', name: 'Mid Lake' }],
        measures: measures({ percentAgreement: statistic(0.4, 0.2, 0.6) }),
      },
    ],
    intraclass: [],
    confusion: {
      taxa: ['Aythya affinis', 'Aythya marila'],
      entries: [
        { a: 'Aythya affinis', b: 'Aythya marila', number: 5 },
        { a: 'Aythya marila', b: 'Aythya affinis', number: 5 },
        { a: 'Aythya marila', b: 'Aythya marila', number: 30 },
        { a: 'Aythya marila', b: null, number: 2 },
        { a: null, b: 'Aythya marila', number: 2 },
      ],
    },
    detection: [
      {
        observers: [ingrid, tom],
        sections: [{ id: 's1', name: 'North Bay' }],
        seen: 10,
        matched: 8,
        byObserver: [{ observer: ingrid, flocks: 9, chance: statistic(0.89, 0.52, 1, 9) }],
        flocks: statistic(10.1, 10, 12.4, 10),
        missedByAll: statistic(0.01, 0, 0.19, 10),
        model: null,
        warning: 'Some flocks are harder to see than others.',
      },
    ],
    observers: [{ observer: ingrid, ratio: statistic(1.2, 1.05, 1.4) }],
    observerModel: {
      n: 24,
      groups: 12,
      betweenGroups: statistic(3, 2, 5),
      betweenObservers: statistic(0.01, null, null),
      residual: statistic(0.04, 0.02, 0.09),
      observers: [
        { observer: ingrid, ratio: statistic(1.1, 1.02, 1.2), set: 1 },
        { observer: tom, ratio: statistic(0.91, 0.83, 1.05), set: 1 },
      ],
    },
    observerConsistency: [],
    ...change,
  };
}

/** The same as the server gives it to those who are no leader. */
export function withoutObservers(whole: Agreement): Agreement {
  return {
    ...whole,
    observers: [],
    observerModel: null,
    observerConsistency: [],
    detection: whole.detection.map((one) => ({ ...one, byObserver: [] })),
  };
}

const head = {
  __typename: 'Count',
  id: 'c1',
  name: 'Lake Test, January',
  waterbody: 'Lake Test',
  date: '2027-01-16',
  timeZone: 'America/Toronto',
  state: 'CLOSED',
};

export function reviewerAnswers(
  role: 'LEADER' | 'COMPILER',
  shown: Agreement,
  more: Answers = {},
): Answers {
  const person = { __typename: 'Person', id: 'l1', name: 'Lena Fisk' };
  const count = { ...head, myRoles: [role], may: ['REVIEW'] };
  const review = { __typename: 'Review', countId: 'c1', inputHash: 'hash-1', openMatters: [] };
  return {
    Me: { me: person },
    MyCounts: { counts: [count] },
    CountHead: { count },
    CountAgreement: { count: { ...count, review: { ...review, withheld: [], agreement: shown } } },
    SignOffStanding: {
      count: {
        ...count,
        protocol: { signOffs: ['COMPILER'] },
        review,
        compiled: { countId: 'c1', signOffs: [], seal: null },
      },
    },
    ...more,
  };
}

export function ownAnswers(own: Own, more: Answers = {}): Answers {
  const count = { ...head, myRoles: ['OBSERVER'], may: ['SEE_OWN_AGREEMENT'] };
  return {
    Me: { me: ingrid },
    MyCounts: { counts: [count] },
    CountHead: { count },
    OwnAgreement: { count: { ...count, ownAgreement: own } },
    ...more,
  };
}
