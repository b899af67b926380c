import fc from 'fast-check';
import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import type { Snapshot, Tally, TallyLine } from '../../server/core/model/snapshot.js';
import { keyOf } from '../../server/core/taxa/candidate-set.js';

const SPECIES = ['Aythya affinis', 'Aythya americana', 'Aythya marila', 'Bucephala clangula'];
const SECTIONS = ['s1', 's2', 's3'];
const OBSERVERS = ['o1', 'o2', 'o3', 'o4'];

const square = (west: number): Snapshot['sections'][number]['polygon'] => [
  [
    [west, 44],
    [west + 0.02, 44],
    [west + 0.02, 44.02],
    [west, 44.02],
    [west, 44],
  ],
];

/** What a random line says; ids and the like are added by `lineOf`. */
interface LineSketch {
  readonly candidates: readonly string[];
  readonly number: number;
  readonly method: 'one-by-one' | 'block';
  readonly flying: boolean;
}

interface TallySketch {
  readonly observer: string;
  readonly sections: readonly string[];
  readonly window: string;
  readonly coverage: number;
  readonly helper: string | null;
  readonly lines: readonly LineSketch[];
}

const line = (most: number): fc.Arbitrary<LineSketch> =>
  fc.record({
    candidates: fc.subarray(SPECIES, { minLength: 1 }).map((set) => [...set].sort()),
    number: fc.nat({ max: most }),
    method: fc.constantFrom('one-by-one' as const, 'block' as const),
    flying: fc.nat({ max: 9 }).map((each) => each === 0),
  });

const tally = (most: number): fc.Arbitrary<TallySketch> =>
  fc.record({
    observer: fc.constantFrom(...OBSERVERS),
    sections: fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom(...SECTIONS).map((section) => [section]) },
      { weight: 1, arbitrary: fc.constant(['s2', 's3']) },
    ),
    window: fc.constantFrom('w1', 'w1', 'w2'),
    coverage: fc.constantFrom(1, 1, 1, 0.5),
    helper: fc.constantFrom(null, null, null, 'o4'),
    lines: fc.uniqueArray(line(most), {
      selector: (each) => `${keyOf(each.candidates)} ${each.flying}`,
      maxLength: 5,
    }),
  });

/**
 * Random counts of up to three sections, four observers and two windows, that shrink to readable
 * ones: fewer tallies, fewer lines, smaller numbers.
 */
export const randomCount = (most = 300): fc.Arbitrary<Snapshot> =>
  fc
    .tuple(
      fc.uniqueArray(tally(most), {
        // An observer is in one place at a time: two tallies of one section are refused on input.
        comparator: (one, other) =>
          one.observer === other.observer &&
          one.window === other.window &&
          one.sections.some((section) => other.sections.includes(section)),
        maxLength: 8,
      }),
      randomHistory(most),
      randomMarks,
    )
    .map(([sketches, history, marks]) => {
      const count = { ...countOf(sketches), history };
      const lines = new Set(count.tallies.flatMap((each) => each.lines.map(({ id }) => id)));
      const noted = marks.filter(({ line: id }) => lines.has(id));
      return readable(noted.length === 0 ? count : { ...count, marks: noted });
    });

/** Mostly none; otherwise six years, enough for something to be said of this one. */
const randomHistory = (most: number): fc.Arbitrary<Snapshot['history']> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.constant([]) },
    {
      weight: 1,
      arbitrary: fc.array(fc.nat({ max: most }), { minLength: 12, maxLength: 12 }).map((numbers) =>
        numbers.map((number, index) => ({
          candidates: [SPECIES[index % 2] ?? ''],
          year: 2021 + Math.floor(index / 2),
          number,
        })),
      ),
    },
  );

/** Mostly none; otherwise some of the pochards' for whatever lines there are. */
const randomMarks: fc.Arbitrary<NonNullable<Snapshot['marks']>> = fc.oneof(
  { weight: 2, arbitrary: fc.constant([]) },
  {
    weight: 1,
    arbitrary: fc.array(
      fc.record({
        line: fc
          .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }))
          .map(([tallied, position]) => `t${tallied}:${position}`),
        mark: fc.constant('bill'),
        state: fc.constantFrom(
          'blue-grey with a broad black tip',
          'blue-grey with black only at the nail',
          'all black',
        ),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  },
);

/** A failing count is shown as its tally lines, not as all of its JSON. */
function readable(snapshot: Snapshot): Snapshot {
  const rows = snapshot.tallies.flatMap((tally) => [
    `${tally.id},${tally.party.join('+')},by ${tally.observer},${tally.sections.join('+')},${tally.window},coverage ${tally.coverage}`,
    ...tally.lines.map(
      (each) =>
        `  ${each.id},${each.written},${each.quantity.kind === 'exact' ? each.quantity.number : ''},${each.method},${each.activity}`,
    ),
  ]);
  const marks = (snapshot.marks ?? []).map((each) => `  ${each.line}: ${each.mark} ${each.state}`);
  return Object.defineProperty(snapshot, fc.toStringMethod, {
    enumerable: false,
    value: () => `\n${[...rows, ...marks].join('\n')}\n`,
  });
}

export const randomProtocol: fc.Arbitrary<Protocol> = fc
  .record({
    rule: fc.constantFrom(
      'mean',
      'median',
      'highest',
      'random-effects',
      'robust-mean',
      'designated',
    ),
    zeros: fc.constantFrom('missed', 'absent'),
    resolution: fc.constantFrom('finer', 'coarser'),
    windows: fc.constantFrom('highest', 'mean', 'w1'),
  })
  .map((settings) => {
    // No bootstrap: agreement statistics have tests of their own, and these run a thousand times.
    const protocol: Protocol = {
      ...defaultProtocol,
      ...settings,
      designated: { '*': 'o1' },
      minimumUnits: 1_000_000,
    };
    return Object.defineProperty(protocol, fc.toStringMethod, {
      enumerable: false,
      value: () => JSON.stringify(settings),
    });
  });

function countOf(sketches: readonly TallySketch[]): Snapshot {
  return {
    id: 'random',
    name: 'A random count',
    waterbody: 'Nowhere Lake',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    windows: [
      {
        id: 'w1',
        start: '2027-01-16T08:00:00-05:00',
        end: '2027-01-16T10:00:00-05:00',
        slackMinutes: 10,
      },
      {
        id: 'w2',
        start: '2027-01-16T12:00:00-05:00',
        end: '2027-01-16T14:00:00-05:00',
        slackMinutes: 10,
      },
    ],
    people: OBSERVERS.map((id) => ({ id, name: `Observer ${id}`, roles: ['observer' as const] })),
    sections: SECTIONS.map((id, index) => ({
      id,
      name: `Section ${id}`,
      polygon: square(-79 + index * 0.02),
    })),
    vantages: [],
    views: [],
    history: [],
    samples: [],
    tallies: sketches.map(tallyOf).sort((one, other) => (one.id < other.id ? -1 : 1)),
  };
}

function tallyOf(sketch: TallySketch, index: number): Tally {
  const id = `t${index + 1}`;
  return {
    id,
    observer: sketch.observer,
    party: [
      ...new Set([sketch.observer, ...(sketch.helper === null ? [] : [sketch.helper])]),
    ].sort(),
    sections: sketch.sections,
    window: sketch.window,
    vantage: null,
    start: null,
    end: null,
    scope: { kind: 'all-waterbirds' },
    coverage: sketch.coverage,
    lines: sketch.lines.map((each, position) => lineOf(each, `${id}:${position + 1}`)),
  };
}

function lineOf(sketch: LineSketch, id: string): TallyLine {
  return {
    id,
    written: sketch.candidates.join('/'),
    candidates: sketch.candidates,
    quantity: { kind: 'exact', number: sketch.number },
    method: sketch.method,
    block: null,
    male: null,
    female: null,
    adult: null,
    immature: null,
    activity: sketch.flying ? 'flying-through' : 'water',
    time: null,
    position: null,
    flock: null,
    heading: null,
    from: null,
    to: null,
    certainty: 'sure',
    note: null,
  };
}
