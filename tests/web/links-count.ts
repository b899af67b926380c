import type {
  CountLinksQuery,
  LinkPartsFragment,
} from '../../web/src/graphql/generated/graphql.js';
import { compiler, compilerAnswers } from './compiler-count.js';
import type { Answers } from './fake-server.js';

type Review = CountLinksQuery['count']['review'];
type Flock = Review['flocks'][number];

export const ingrid = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' } as const;
export const tom = { __typename: 'Person', id: 'o2', name: 'Tom Reed' } as const;

const square = (west: number, south: number): number[][][] => [
  [
    [west, south],
    [west + 0.04, south],
    [west + 0.04, south + 0.04],
    [west, south + 0.04],
    [west, south],
  ],
];
export const north = { id: 's1', name: 'North Bay', polygon: square(-79.04, 44.04) };
export const south = { id: 's2', name: 'South Bay', polygon: square(-79.04, 44) };

/** The scaup raft that swam 1.1 km in 22 minutes. */
export const raft: LinkPartsFragment = {
  id: 'a1~b1',
  kind: 'movement',
  probability: 0.96,
  birds: 380,
  proposed: true,
  ruling: null,
  deducted: false,
  deduction: [{ taxon: 'Aythya affinis/marila', number: 380 }],
  first: {
    cell: 's1:w1',
    section: north,
    lines: ['a1'],
    observers: [ingrid],
    taxon: 'Aythya affinis',
    number: 400,
    start: '2027-01-16T08:30:00-05:00',
    end: '2027-01-16T08:30:00-05:00',
    position: [-79.02, 44.045],
  },
  second: {
    cell: 's2:w1',
    section: south,
    lines: ['b1'],
    observers: [tom],
    taxon: 'Aythya affinis/marila',
    number: 380,
    start: '2027-01-16T08:52:00-05:00',
    end: '2027-01-16T08:52:00-05:00',
    position: [-79.02, 44.035],
  },
  evidence: [
    {
      name: 'travel',
      text: '1.1 km in 22 minutes (3.0 km/h), which a swimming flock covers',
      weight: 5.4,
    },
    { name: 'size', text: '400 and 380 birds: alike within counting error', weight: 2.2 },
    { name: 'alternatives', text: 'it is one of 4 flocks in South Bay', weight: -1.39 },
    {
      name: 'kind',
      text: 'Aythya affinis and Aythya affinis/marila can be the same birds',
      weight: 0.4,
    },
  ],
};

/** Few birds, nothing noted of their place, and not likely one flock. */
export const party: LinkPartsFragment = {
  ...raft,
  id: 'a2~b2',
  probability: 0.12,
  birds: 14,
  proposed: false,
  deduction: [{ taxon: 'Clangula hyemalis', number: 14 }],
  first: {
    ...raft.first,
    lines: ['a2'],
    taxon: 'Clangula hyemalis',
    number: 14,
    start: '2027-01-16T09:10:00-05:00',
    end: '2027-01-16T09:10:00-05:00',
    position: null,
  },
  second: {
    ...raft.second,
    lines: ['b2'],
    taxon: 'Clangula hyemalis',
    number: 28,
    start: '2027-01-16T10:10:00-05:00',
    end: '2027-01-16T10:10:00-05:00',
    position: null,
  },
  evidence: [{ name: 'size', text: '28 and 14 birds: not much alike', weight: -0.9 }],
};

function flockOf(sighting: LinkPartsFragment['first'], change: Partial<Flock> = {}): Flock {
  const { lines, taxon, number, position, section, observers } = sighting;
  return {
    lines,
    observer: observers[0] ?? ingrid,
    sections: [section],
    window: { id: 'w1' },
    taxon,
    number,
    start: sighting.start ?? '',
    end: sighting.end ?? '',
    timeNoted: true,
    position,
    ...change,
  };
}

/** Another raft that stayed where it was. */
export const still = flockOf(raft.first, {
  lines: ['a3'],
  taxon: 'Bucephala clangula',
  number: 90,
  start: '2027-01-16T08:10:00-05:00',
  end: '2027-01-16T08:10:00-05:00',
  position: [-79.03, 44.07],
});

export const flocks: readonly Flock[] = [
  still,
  ...[raft.first, raft.second, party.first, party.second].map((one) => flockOf(one)),
];

/** What the server answers a compiler who looks at the double counts. */
export function linksAnswers(
  links: readonly LinkPartsFragment[],
  review: Readonly<Record<string, unknown>> = {},
  more: Answers = {},
  may: readonly string[] = ['REVIEW', 'RULE', 'SECOND', 'ASK'],
): Answers {
  return compilerAnswers(
    [],
    {},
    {
      CountLinks: {
        me: compiler,
        count: {
          __typename: 'Count',
          id: 'c1',
          may,
          timeZone: 'America/Toronto',
          windows: [
            { id: 'w1', start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' },
          ],
          sections: [north, south],
          vantages: [{ id: 'v1', name: 'Dock', position: [-79.05, 44.04], views: [] }],
          shoreline: [],
          protocol: { linkThreshold: 0.9, deductLinks: 'proposed' },
          queries: [],
          review: {
            __typename: 'Review',
            countId: 'c1',
            inputHash: 'hash-1',
            links: links.map((link) => ({ __typename: 'Link', ...link })),
            flocks: flocks.map((flock) => ({ __typename: 'Flock', ...flock })),
            cells: ['s1', 's2'].map((section) => ({
              id: `${section}:w1`,
              window: { id: 'w1' },
            })),
            disagreements: [
              {
                __typename: 'Disagreement',
                id: `possible-double-count:${raft.id}`,
                link: { id: raft.id },
                queries: [],
              },
            ],
            withheld: [],
            rulings: [],
            ...review,
          },
        },
      },
      ...more,
    },
  );
}
