import { describe, expect, it } from 'vitest';
import {
  COUNT,
  DEMO,
  KNOWN_LINKS,
  ringsOf,
  TALLIES,
  TRUTH,
  vantages,
} from './lake-emberlow-files.js';
import { commonArea, contains, crossings, kilometres, sharedSides, signedArea } from './plane.js';

const sections = ringsOf('section');
const views = ringsOf('view');
const lineIds = new Set(TALLIES.map((row) => row['line']));
const tallyIds = [...new Set(TALLIES.map((row) => row['tally']))];
const rowsOf = (tally: string | undefined) => TALLIES.filter((row) => row['tally'] === tally);
const positioned = TALLIES.filter((row) => row['lon'] !== '');
const positionOf = (row: Readonly<Record<string, string>>): [number, number] => [
  Number(row['lon']),
  Number(row['lat']),
];

describe('the lake', () => {
  it('has six sections that are valid, counter-clockwise and no rectangles (RFC 7946, 3.1.6)', () => {
    expect([...sections.keys()]).toEqual(['s1', 's2', 's3', 's4', 's5', 's6']);
    for (const ring of sections.values()) {
      expect(ring.at(0)).toEqual(ring.at(-1));
      expect(signedArea(ring)).toBeGreaterThan(0);
      expect(crossings(ring)).toBe(0);
      expect(ring.length).toBeGreaterThan(20);
    }
  });

  it('is 12 to 20 km long', () => {
    const shore = [...sections.values()].flat();
    const far = Math.max(...shore.flatMap((a) => shore.map((b) => kilometres(a, b))));
    expect(far).toBeGreaterThan(12);
    expect(far).toBeLessThan(20);
  });

  it('is divided without gap or overlap: neighbours share borders and no water', () => {
    const neighbours = [...sections].flatMap(([one, a]) =>
      [...sections].flatMap(([other, b]) =>
        one < other && sharedSides(a, b) > 0 ? [`${one} ${other}`] : [],
      ),
    );
    expect(neighbours).toEqual(['s1 s2', 's2 s3', 's2 s4', 's3 s4', 's3 s5', 's4 s5', 's5 s6']);
    for (const [one, a] of sections) {
      for (const [other, b] of sections) if (one < other) expect(commonArea(a, b)).toBe(0);
    }
  });

  it('has four vantage points on the shore, each with its view over the lake', () => {
    const points = vantages();
    expect([...points.keys()]).toEqual(['v1', 'v2', 'v3', 'v4']);
    const shore = new Set([...sections.values()].flat().map(String));
    for (const [name, point] of points) {
      expect(shore).toContain(String(point));
      const view = views.get(name) ?? [];
      expect(view.map(String)).toContain(String(point));
      expect(signedArea(view)).toBeGreaterThan(0);
      expect(crossings(view)).toBe(0);
    }
  });

  it('has exactly two fields of view that overlap, by more than a square kilometre', () => {
    const overlaps = [...views].flatMap(([one, a]) =>
      [...views].flatMap(([other, b]) =>
        one < other && commonArea(a, b) > 0.1 ? [[one, other, commonArea(a, b)] as const] : [],
      ),
    );
    expect(overlaps.map(([one, other]) => [one, other])).toEqual([['v2', 'v3']]);
    expect(overlaps[0]?.[2]).toBeGreaterThan(1);
  });
});

describe('the people and their tallies', () => {
  it('has a leader, a compiler who also observes and five observers', () => {
    expect(COUNT.people.map((person) => person.roles.join('+')).sort()).toEqual([
      'compiler+observer',
      'leader',
      'observer',
      'observer',
      'observer',
      'observer',
      'observer',
    ]);
  });

  it('has one window of three hours, and all times of tallies and lines lie inside', () => {
    expect(COUNT.windows).toHaveLength(1);
    const [start, end] = [COUNT.windows[0]?.start ?? '', COUNT.windows[0]?.end ?? ''];
    expect(Date.parse(end) - Date.parse(start)).toBe(3 * 3_600_000);
    for (const row of TALLIES) {
      const from = Date.parse(row['start'] ?? '');
      const until = Date.parse(row['end'] ?? '');
      expect(from).toBeGreaterThanOrEqual(Date.parse(start));
      expect(until).toBeLessThanOrEqual(Date.parse(end));
      if (row['time'] === '') continue;
      expect(Date.parse(row['time'] ?? '')).toBeGreaterThanOrEqual(from);
      expect(Date.parse(row['time'] ?? '')).toBeLessThanOrEqual(until);
    }
  });

  it('lets nobody be at two vantage points at once, nor travel between them in no time', () => {
    const stays = tallyIds.flatMap((tally) => {
      const [row] = rowsOf(tally);
      const people = (row?.['party'] || row?.['observer'] || '').split('+');
      return people.map((person) => ({
        person,
        vantage: row?.['vantage'],
        start: Date.parse(row?.['start'] ?? ''),
        end: Date.parse(row?.['end'] ?? ''),
      }));
    });
    for (const one of stays) {
      for (const other of stays) {
        if (one === other || one.person !== other.person || one.start > other.start) continue;
        const minutes = (other.start - one.end) / 60_000;
        expect(minutes).toBeGreaterThanOrEqual(one.vantage === other.vantage ? 0 : 15);
      }
    }
  });

  it('has about 250 lines, each with an id of its own, and 30 or more taxa in truth', () => {
    expect(TALLIES.length).toBeGreaterThanOrEqual(235);
    expect(TALLIES.length).toBeLessThanOrEqual(265);
    expect(lineIds.size).toBe(TALLIES.length);
    expect(Object.keys(TRUTH.total).length).toBeGreaterThanOrEqual(30);
  });

  it('has at least two independent full counts on four sections or more, and one alone on one', () => {
    const full = [...sections.keys()].map((section) => {
      const parties = new Map(
        TALLIES.filter(
          (row) => row['section']?.split('+').includes(section) && row['coverage'] === '',
        ).map((row) => [row['tally'], (row['party'] || row['observer'] || '').split('+')]),
      );
      const taken = new Set<string>();
      let independent = 0;
      for (const party of parties.values()) {
        if (!party.some((person) => taken.has(person))) independent += 1;
        for (const person of party) taken.add(person);
      }
      return independent;
    });
    expect(full).toEqual([2, 2, 2, 2, 2, 1]);
  });

  it('has one party of two, one merged tally, one of half its section, one stated zero', () => {
    const tallied = (test: (row: Readonly<Record<string, string>>) => boolean) => [
      ...new Set(TALLIES.filter(test).map((row) => row['tally'])),
    ];
    expect(tallied((row) => row['party']?.includes('+') ?? false)).toEqual(['o5-s5']);
    expect(tallied((row) => row['section']?.includes('+') ?? false)).toEqual(['o2-s12']);
    expect(tallied((row) => row['coverage'] === '0.5')).toEqual(['o3-s4']);
    expect(TALLIES.filter((row) => row['number'] === '0').map((row) => row['line'])).toEqual([
      'o4-s3:25',
    ]);
  });

  it('places every flock inside the section it was tallied in', () => {
    expect(positioned.length).toBeGreaterThan(50);
    for (const row of positioned) {
      const rings = (row['section'] ?? '').split('+').map((id) => sections.get(id) ?? []);
      expect(
        rings.some((ring) => contains(ring, positionOf(row))),
        row['line'],
      ).toBe(true);
    }
  });

  it('places the goldeneyes on the section line in both views that overlap', () => {
    for (const line of ['o3-s3:12', 'o4-s4:06', 'o5-s4:09']) {
      const row = TALLIES.find((each) => each['line'] === line);
      if (row === undefined) throw new Error(`${line} is missing`);
      expect(contains(views.get('v2') ?? [], positionOf(row))).toBe(true);
      expect(contains(views.get('v3') ?? [], positionOf(row))).toBe(true);
    }
  });

  it('never gives more males and females, or adults and immatures, than birds', () => {
    for (const row of TALLIES.filter((each) => each['number'] !== '')) {
      const number = Number(row['number']);
      expect(Number(row['male']) + Number(row['female'])).toBeLessThanOrEqual(number);
      expect(Number(row['adult']) + Number(row['immature'])).toBeLessThanOrEqual(number);
    }
  });
});

describe('the truth', () => {
  it('adds up: the sections to the total', () => {
    const sum: Record<string, number> = {};
    for (const section of Object.values(TRUTH.sections)) {
      for (const [taxon, number] of Object.entries(section)) {
        sum[taxon] = (sum[taxon] ?? 0) + number;
      }
    }
    expect(sum).toEqual(TRUTH.total);
  });

  it('names links between lines that exist, the same in truth.json and links.csv', () => {
    const yes = KNOWN_LINKS.filter((row) => row['same'] === 'yes');
    expect(yes.map((row) => [row['line_a'], row['line_b']])).toEqual(
      TRUTH.links.map((link) => [...link.lines]),
    );
    for (const row of KNOWN_LINKS) {
      expect(lineIds).toContain(row['line_a']);
      expect(lineIds).toContain(row['line_b']);
    }
    expect(KNOWN_LINKS.some((row) => row['same'] === 'no')).toBe(true);
  });

  it('makes the flown and the swum raft physically possible', () => {
    const at = (line: string) => TALLIES.find((row) => row['line'] === line) ?? {};
    const speed = (from: string, to: string): number => {
      const hours = (Date.parse(at(to)['time'] ?? '') - Date.parse(at(from)['time'] ?? '')) / 3.6e6;
      return kilometres(positionOf(at(from)), positionOf(at(to))) / hours;
    };
    // Common practice, no source: swimming up to 3 km/h, flying 40 to 100 km/h.
    expect(speed('k1-s5:06', 'k1-s6:01')).toBeLessThan(3);
    expect(speed('o5-s5:11', 'k1-s6:01')).toBeLessThan(3);
    const flown = speed('o5-s4:07', 'k1-s5:07');
    expect(flown).toBeGreaterThan(40);
    expect(flown).toBeLessThan(100);
  });

  it('has one observer a quarter to a third low on big flocks, and the others near the truth', () => {
    const pochards = (tally: string): number =>
      rowsOf(tally)
        .filter((row) =>
          /scaup|redhead|canvasback|ring-necked|aythya|GRSC|LESC|REDH|CANV|RNDU/iu.test(
            row['taxon'] ?? '',
          ),
        )
        .reduce((sum, row) => sum + Number(row['number']), 0);
    const true3 = 1610 + 680 + 750 + 210 + 95 + 1;
    const true4 = 1750 + 600 + 190;
    for (const [tally, truth] of [
      ['o4-s3', true3],
      ['o4-s4', true4],
    ] as const) {
      expect(pochards(tally) / truth).toBeGreaterThan(0.67);
      expect(pochards(tally) / truth).toBeLessThan(0.76);
    }
    expect(pochards('o3-s3') / true3).toBeGreaterThan(0.9);
    expect(pochards('o5-s4') / true4).toBeGreaterThan(0.9);
  });
});

describe('the demo', () => {
  it('leaves out a tally of the named observer, of a section that another has counted', () => {
    const [left] = DEMO.leaveOut;
    expect(DEMO.leaveOut).toHaveLength(1);
    const [row] = rowsOf(left);
    expect(row?.['observer']).toBe(DEMO.observer);
    const others = TALLIES.filter(
      (each) => each['section'] === row?.['section'] && each['observer'] !== DEMO.observer,
    );
    expect(others.length).toBeGreaterThan(0);
    const rolesOf = (id: string) => COUNT.people.find((person) => person.id === id)?.roles;
    expect(rolesOf(DEMO.leader)).toContain('leader');
    expect(rolesOf(DEMO.compiler)).toContain('compiler');
    expect(others.map((each) => each['observer'])).not.toContain(DEMO.compiler);
  });
});
