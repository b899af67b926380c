import type {
  MyAssignmentsQuery,
  OwnTallyFragment,
} from '../../web/src/graphql/generated/graphql.js';
import type { Answers } from './fake-server.js';

type OwnPart = MyAssignmentsQuery['count'];

const observer = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' } as const;

const window = {
  id: 'w1',
  start: '2027-01-16T08:00:00-05:00',
  end: '2027-01-16T11:00:00-05:00',
  closed: false,
};

/** About 1.6 by 2.2 km, its south-west corner at 44° N. */
function squareAt(west: number): number[][] {
  return [
    [west, 44],
    [west + 0.02, 44],
    [west + 0.02, 44.02],
    [west, 44.02],
    [west, 44],
  ];
}

/** One observer's part of an invented count: one assignment, nothing submitted. */
export function ownPart(change: Partial<OwnPart> = {}): OwnPart {
  const section = { id: 's1', name: 'North Bay' };
  return {
    id: 'c1',
    name: 'Lake Test, January',
    waterbody: 'Lake Test',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    sections: [
      { ...section, polygon: [squareAt(-79.02)] },
      { id: 's2', name: 'Mid Lake', polygon: [squareAt(-79)] },
    ],
    vantages: [{ id: 'v1', name: 'Old pier', position: [-79.01, 43.999], views: [] }],
    shoreline: [],
    expectedTaxa: [],
    people: [
      { person: observer, roles: ['OBSERVER'] },
      { person: { id: 'o2', name: 'Tom Reed' }, roles: ['OBSERVER'] },
    ],
    assignments: [
      {
        id: 'a1',
        person: observer,
        sections: [section],
        window,
        vantage: { id: 'v1', name: 'Old pier' },
        submitted: false,
      },
    ],
    myTallies: [],
    queries: [],
    ...change,
  };
}

/** A tally that this observer sent, without a line. */
export function ownTally(change: Partial<OwnTallyFragment> = {}): OwnTallyFragment {
  return {
    id: 't1',
    sections: [{ id: 's1', name: 'North Bay' }],
    window: { id: 'w1' },
    vantage: { id: 'v1' },
    party: [{ id: observer.id, name: observer.name }],
    start: '2027-01-16T08:15:00-05:00',
    end: '2027-01-16T10:30:00-05:00',
    scope: 'all-waterbirds',
    coverage: 1,
    seenArea: null,
    conditions: null,
    submittedAt: '2027-01-16T10:31:00-05:00',
    version: 1,
    replaces: null,
    reason: null,
    total: 0,
    samples: [],
    lines: [],
    ...change,
  };
}

/** What the server answers an observer who is signed in. */
export function observerAnswers(part: OwnPart, more: Answers = {}): Answers {
  return {
    Me: { me: observer },
    MyCounts: { counts: [{ ...headOf(part), myRoles: ['OBSERVER'] }] },
    CountHead: { count: { ...headOf(part), myRoles: ['OBSERVER'], may: ['SUBMIT_TALLY'] } },
    MyAssignments: () => ({ me: observer, count: part }),
    ...more,
  };
}

function headOf(part: OwnPart): Readonly<Record<string, unknown>> {
  const { id, name, waterbody, date, timeZone } = part;
  return { __typename: 'Count', id, name, waterbody, date, timeZone, state: 'OPEN' };
}
