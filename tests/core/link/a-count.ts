import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import type { Protocol } from '../../../server/core/model/protocol.js';
import type {
  Polygon,
  Position,
  Snapshot,
  Tally,
  TallyLine,
} from '../../../server/core/model/snapshot.js';

/** A made-up lake in a flat row of sections, s1 westmost, each 2 km wide and 2 km high. */
const SOUTH = 44;
const WEST = -79;
const KM_EAST = 1 / 80.18; // degrees of longitude in a kilometre at 44.01° N
const KM_NORTH = 1 / 111.1;

/** A position so many kilometres east and north of the lake's south-west corner. */
export function at(east: number, north: number): Position {
  return [WEST + east * KM_EAST, SOUTH + north * KM_NORTH];
}

export function box(west: number, south: number, east: number, north: number): Polygon {
  return [[at(west, south), at(east, south), at(east, north), at(west, north), at(west, south)]];
}

/** An instant on the count's morning, `9:05` say. */
export function clock(time: string): string {
  return `2027-01-16T${time.padStart(5, '0')}:00-05:00`;
}

export function aLine(id: string, change: Partial<TallyLine> = {}): TallyLine {
  return {
    id,
    written: 'Aythya marila',
    candidates: ['Aythya marila'],
    quantity: { kind: 'exact', number: 100 },
    method: 'block',
    block: null,
    male: null,
    female: null,
    adult: null,
    immature: null,
    activity: 'water',
    time: null,
    position: null,
    flock: null,
    heading: null,
    from: null,
    to: null,
    certainty: 'sure',
    note: null,
    ...change,
  };
}

export function birds(number: number): { quantity: TallyLine['quantity'] } {
  return { quantity: { kind: 'exact', number } };
}

export function aTally(id: string, change: Partial<Tally> = {}): Tally {
  const observer = change.observer ?? `observer-${id}`;
  return {
    id,
    observer,
    party: [observer],
    sections: ['s1'],
    window: 'w1',
    vantage: null,
    start: clock('8:00'),
    end: clock('11:00'),
    scope: { kind: 'all-waterbirds' },
    coverage: 1,
    lines: [],
    ...change,
  };
}

export function aSnapshot(tallies: readonly Tally[], change: Partial<Snapshot> = {}): Snapshot {
  const sections = [0, 1, 2, 3].map((index) => ({
    id: `s${index + 1}`,
    name: `Section ${index + 1}`,
    polygon: box(2 * index, 0, 2 * index + 2, 2),
  }));
  return {
    id: 'made-up',
    name: 'Made-up count',
    waterbody: 'Long Mere',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    windows: [{ id: 'w1', start: clock('8:00'), end: clock('11:00'), slackMinutes: 10 }],
    people: [],
    sections,
    vantages: [],
    views: [],
    history: [],
    samples: [],
    tallies,
    ...change,
  };
}

export function cellOf(tally: Tally): string {
  return `${tally.sections.join('+')}:${tally.window}`;
}

export const protocol: Protocol = defaultProtocol;

/** Other flocks of a believable morning, so that kinds and sizes have something to be held against. */
export function otherFlocks(section: string, prefix: string): TallyLine[] {
  const kinds: [taxon: string, number: number, time: string][] = [
    ['Anas platyrhynchos', 45, '8:40'],
    ['Anas platyrhynchos', 120, '9:20'],
    ['Bucephala clangula', 30, '8:50'],
    ['Bucephala clangula', 64, '9:45'],
    ['Mergus merganser', 22, '9:05'],
    ['Aythya marila', 80, '8:45'],
  ];
  return kinds.map(([taxon, number, time], index) =>
    aLine(`${prefix}${section}-${index}`, {
      written: taxon,
      candidates: [taxon],
      ...birds(number + 3 * Number(section.slice(1))),
      time: clock(time),
      method: 'one-by-one',
    }),
  );
}
