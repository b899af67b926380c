import type { OneDisagreementQuery } from '../../web/src/graphql/generated/graphql.js';
import type { Answers } from './fake-server.js';

type Shown = NonNullable<OneDisagreementQuery['count']['review']['disagreement']>;
type Cell = NonNullable<Shown['cell']>;

export const compiler = { __typename: 'Person', id: 'k1', name: 'Lena Fisk' } as const;
const ingrid = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' } as const;
const tom = { __typename: 'Person', id: 'o2', name: 'Tom Reed' } as const;

const head = {
  __typename: 'Count',
  id: 'c1',
  name: 'Lake Test, January',
  waterbody: 'Lake Test',
  date: '2027-01-16',
  timeZone: 'America/Toronto',
  state: 'CLOSED',
  myRoles: ['COMPILER'],
  may: ['REVIEW', 'RULE', 'SECOND', 'ASK', 'SEE_COMPILED'],
};

/** Scaup that two observers named differently: 50 birds are paired as Greater with Lesser. */
export const scaup = {
  id: 'g1',
  taxa: ['Aythya affinis', 'Aythya affinis/marila', 'Aythya marila'],
  totals: [
    { observer: 'o1', observerName: ingrid.name, number: 115, stated: true },
    { observer: 'o2', observerName: tom.name, number: 100, stated: true },
  ],
  consensus: {
    rule: 'mean',
    number: 108,
    low: 98,
    high: 120,
    q: null,
    tau2: null,
    i2: null,
    predicted: null,
    byRule: [
      { rule: 'highest', number: 115 },
      { rule: 'mean', number: 108 },
    ],
  },
  lines: [
    { taxon: 'Aythya affinis', candidates: ['Aythya affinis'], number: 11 },
    {
      taxon: 'Aythya affinis/marila',
      candidates: ['Aythya affinis', 'Aythya marila'],
      number: 80,
    },
    { taxon: 'Aythya marila', candidates: ['Aythya marila'], number: 17 },
  ],
};

/** Another group of the same place, on which the two all but agree. */
const redhead = {
  id: 'g2',
  taxa: ['Aythya americana'],
  totals: [
    { observer: 'o1', observerName: ingrid.name, number: 40 },
    { observer: 'o2', observerName: tom.name, number: 38 },
  ],
  consensus: { number: 39 },
};

export const cell: Cell = {
  id: 's1:w1',
  sections: [{ id: 's1', name: 'North Bay' }],
  window: { id: 'w1', start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' },
  layer: 'using',
  feasible: false,
  birdsInConflict: 65,
  witness:
    "Ingrid Vale's 85 Greater Scaup cannot all be right if Tom Reed's 60 Lesser Scaup are: Ingrid Vale has at least 85 Greater Scaup, but Tom Reed leaves room for at most 40.",
  groups: [scaup, redhead],
  tallies: [
    {
      tally: 't1',
      observer: 'o1',
      observerName: ingrid.name,
      total: 155,
      coverage: 1,
      seenAreas: [],
      conditions: [],
      counted: true,
      lines: [
        line('Aythya affinis', 10, 'l1'),
        line('Aythya affinis/marila', 20, 'l2'),
        line('Aythya marila', 85, 'l3'),
        line('Aythya americana', 40, 'l4'),
      ],
    },
    {
      tally: 't2',
      observer: 'o2',
      observerName: tom.name,
      total: 138,
      coverage: 1,
      seenAreas: [],
      conditions: [],
      counted: true,
      lines: [
        line('Aythya affinis', 60, 'm1'),
        line('Aythya affinis/marila', 25, 'm2'),
        line('Aythya marila', 15, 'm3'),
        line('Aythya americana', 38, 'm4'),
      ],
    },
  ],
  pairings: [
    {
      a: 'o1',
      b: 'o2',
      aName: ingrid.name,
      bName: tom.name,
      agreed: 83,
      compatible: 5,
      differently: 50,
      onlyA: 17,
      onlyB: 0,
      outsideScopeA: 0,
      outsideScopeB: 0,
      independent: true,
      complete: true,
      flows: [
        { kind: 'agreed', a: 'Aythya affinis', b: 'Aythya affinis', number: 10 },
        { kind: 'agreed', a: 'Aythya affinis/marila', b: 'Aythya affinis/marila', number: 20 },
        { kind: 'agreed', a: 'Aythya marila', b: 'Aythya marila', number: 15 },
        { kind: 'agreed', a: 'Aythya americana', b: 'Aythya americana', number: 38 },
        { kind: 'compatible', a: 'Aythya marila', b: 'Aythya affinis/marila', number: 5 },
        { kind: 'differently', a: 'Aythya marila', b: 'Aythya affinis', number: 50 },
        { kind: 'only-a', a: 'Aythya marila', b: null, number: 15 },
        { kind: 'only-a', a: 'Aythya americana', b: null, number: 2 },
      ],
    },
  ],
  bounds: [],
};

function line(taxon: string, number: number, id: string): Cell['tallies'][number]['lines'][number] {
  return { taxon, candidates: [taxon], number, lines: [id] };
}

export function disagreement(change: Partial<Shown> = {}): Shown {
  return {
    id: 'd1',
    kind: 'identified-differently',
    severity: 'SERIOUS',
    birds: 50,
    text: 'Ingrid Vale and Tom Reed identified 50 birds differently.',
    observers: [ingrid, tom],
    cell,
    group: scaup,
    link: null,
    lines: [],
    proposals: [],
    ruling: null,
    queries: [],
    ...change,
  };
}

/** What the server answers a compiler; the first disagreement is the one whose page it knows. */
export function compilerAnswers(
  listed: readonly Shown[],
  review: Readonly<Record<string, unknown>> = {},
  more: Answers = {},
): Answers {
  const [shown] = listed;
  const whole = {
    __typename: 'Review',
    countId: 'c1',
    inputHash: 'hash-1',
    openMatters: [],
    rulings: [],
    ...review,
  };
  return {
    Me: { me: compiler },
    MyCounts: { counts: [head] },
    CountHead: { count: head },
    DisagreementList: {
      me: compiler,
      count: { ...head, review: { ...whole, disagreements: listed } },
    },
    OneDisagreement: {
      me: compiler,
      count: { ...head, sections: [], vantages: [], review: { ...whole, disagreement: shown } },
    },
    SignOffStanding: {
      count: {
        ...head,
        protocol: { signOffs: ['COMPILER'] },
        review: whole,
        compiled: { countId: 'c1', signOffs: [], seal: null },
      },
    },
    ...more,
  };
}
