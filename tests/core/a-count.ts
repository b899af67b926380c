import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import { inEnglish } from '../../server/core/model/saying.js';
import type { Protocol } from '../../server/core/model/protocol.js';
import type { Snapshot, Tally, TallyLine } from '../../server/core/model/snapshot.js';
import { parseTaxon } from '../../server/core/taxa/parse-taxon.js';

/** A line in short: taxon and number, with whatever else a test is about. */
export type ShortLine = readonly [taxon: string, number: number | null, more?: Partial<TallyLine>];

/** A tally that is valid by default: all of section s1 in window w1, all waterbirds. */
export function aTally(
  observer: string,
  lines: readonly ShortLine[],
  more: Partial<Tally> = {},
): Tally {
  const id = more.id ?? `t-${observer}`;
  return {
    id,
    observer,
    party: [observer],
    sections: ['s1'],
    window: 'w1',
    vantage: null,
    start: '2027-01-16T08:00:00-05:00',
    end: '2027-01-16T10:00:00-05:00',
    scope: { kind: 'all-waterbirds' },
    coverage: 1,
    ...more,
    lines: lines.map(([taxon, number, rest], index) =>
      aLine(`${id}:${index + 1}`, taxon, number, rest ?? {}),
    ),
  };
}

function aLine(
  id: string,
  taxon: string,
  number: number | null,
  more: Partial<TallyLine> = {},
): TallyLine {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) throw new Error(inEnglish(parsed.problem));
  return {
    id,
    written: taxon,
    candidates: parsed.candidates,
    quantity: number === null ? { kind: 'present' } : { kind: 'exact', number },
    method: 'one-by-one',
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
    ...more,
  };
}

/** A count of three sections in a row and two windows. */
export function aCount(tallies: readonly Tally[]): Snapshot {
  const section = (id: string, name: string, west: number): Snapshot['sections'][number] => ({
    id,
    name,
    polygon: [
      [
        [west, 44],
        [west + 0.02, 44],
        [west + 0.02, 44.02],
        [west, 44.02],
        [west, 44],
      ],
    ],
  });
  return {
    id: 'test-count',
    name: 'Test count',
    waterbody: 'Test Lake',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    windows: [
      {
        id: 'w1',
        start: '2027-01-16T08:00:00-05:00',
        end: '2027-01-16T11:00:00-05:00',
        slackMinutes: 10,
      },
      {
        id: 'w2',
        start: '2027-01-16T12:00:00-05:00',
        end: '2027-01-16T14:00:00-05:00',
        slackMinutes: 10,
      },
    ],
    people: ['o1', 'o2', 'o3', 'o4'].map((id) => ({ id, name: id, roles: ['observer'] })),
    sections: [
      section('s1', 'North arm', -79.02),
      section('s2', 'Outlet', -79),
      section('s3', 'Ferry bay', -78.98),
    ],
    vantages: [],
    views: [],
    history: [],
    samples: [],
    tallies,
  };
}

export function aProtocol(more: Partial<Protocol> = {}): Protocol {
  return { ...defaultProtocol, ...more };
}
