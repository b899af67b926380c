import { describe, expect, it } from 'vitest';
import { findLinks, type FoundLink } from '../../../server/core/link/find-links.js';
import type { Snapshot, TallyLine } from '../../../server/core/model/snapshot.js';
import {
  aLine,
  aSnapshot,
  aTally,
  at,
  birds,
  box,
  cellOf,
  clock,
  otherFlocks,
  protocol,
} from './a-count.js';
import { inEnglish } from '../../../server/core/model/saying.js';

/*
 * Facts of the trade: what a compiler who knows waterfowl would say of these pairs. Common practice,
 * no source; the numbers are ours.
 */

function links(snapshot: Snapshot): readonly FoundLink[] {
  return findLinks(snapshot, cellOf, protocol);
}

/** One tally a section, s1 and s2, with other flocks about unless told not to. */
function twoSections(
  first: Partial<TallyLine>,
  second: Partial<TallyLine>,
  others = true,
): Snapshot {
  const lines = (section: string, line: TallyLine) => [
    line,
    ...(others ? otherFlocks(section, 'x-') : []),
  ];
  return aSnapshot([
    aTally('a', { sections: ['s1'], lines: lines('s1', aLine('a1', first)) }),
    aTally('b', { sections: ['s2'], lines: lines('s2', aLine('b1', second)) }),
  ]);
}

const between = (found: readonly FoundLink[], a: string, b: string) =>
  found.find(({ lines }) => lines.includes(a) && lines.includes(b));

const leaving: Partial<TallyLine> = {
  ...birds(1200),
  time: clock('9:10'),
  position: at(1.2, 1),
  heading: 90,
  to: 's2',
};

describe('a raft that swam over', () => {
  const arrived = { ...birds(1150), time: clock('9:40'), position: at(2.7, 1) };

  it('is proposed when size, time, heading and stated section fit', () => {
    for (const others of [true, false]) {
      const found = links(twoSections(leaving, arrived, others));
      const link = between(found, 'a1', 'b1');
      expect(link?.probability).toBeGreaterThanOrEqual(0.9);
      expect(link).toMatchObject({ id: 'a1~b1', kind: 'movement', proposed: true, birds: 1150 });
      expect(link?.first.section).toBe('s1');
      expect(link?.second.section).toBe('s2');
    }
  });

  it('says why, strongest first, and the weights add up to the odds', () => {
    const link = between(links(twoSections(leaving, arrived, false)), 'a1', 'b1');
    const weights = link?.evidence.map(({ weight }) => Math.abs(weight)) ?? [];
    expect(weights).toEqual(weights.toSorted((a, b) => b - a));
    const texts = link?.evidence.map(({ text }) => inEnglish(text)).join('\n') ?? '';
    expect(texts).toContain('reported as going to Section 2');
    expect(texts).toContain('1.5 km in 30 minutes (3.0 km/h), which a swimming flock covers');
    expect(texts).toContain('1200 and 1150 birds: alike within counting error');
    expect(texts).toContain('first seen heading 90°, which fits the way (90°)');
    // Nothing competes here, so the probability is that of the evidence alone.
    const odds = link?.evidence.reduce((sum, { weight }) => sum + weight, 0) ?? NaN;
    expect(link?.probability).toBeCloseTo(1 / (1 + Math.exp(-odds)), 3);
  });

  it('is less sure without the stated section, and still less heading away', () => {
    const unstated = between(links(twoSections({ ...leaving, to: null }, arrived)), 'a1', 'b1');
    const away = { ...leaving, to: null, heading: 270 };
    const turned = between(links(twoSections(away, arrived)), 'a1', 'b1');
    const stated = between(links(twoSections(leaving, arrived)), 'a1', 'b1');
    expect(unstated?.probability).toBeLessThan(stated?.probability ?? 0);
    expect(turned?.probability ?? 0).toBeLessThan(unstated?.probability ?? 0);
  });

  it('is not linked when it was said to go elsewhere', () => {
    const elsewhere = links(twoSections({ ...leaving, to: 's4', heading: null }, arrived));
    expect(between(elsewhere, 'a1', 'b1')?.proposed ?? false).toBe(false);
  });

  it('is not linked when half of it is missing and nothing else speaks for it', () => {
    const half = { ...arrived, ...birds(480) };
    const plain = { ...leaving, to: null, heading: null };
    expect(between(links(twoSections(plain, half)), 'a1', 'b1')?.proposed ?? false).toBe(false);
  });
});

describe('a raft that cannot have got there', () => {
  it('is not linked 5 km away after two minutes, whatever was stated', () => {
    const from = { ...leaving, position: at(0.5, 1), to: 's3' };
    const snapshot = aSnapshot([
      aTally('a', { sections: ['s1'], lines: [aLine('a1', from)] }),
      aTally('b', {
        sections: ['s3'],
        lines: [aLine('b1', { ...birds(1150), time: clock('9:12'), position: at(5.5, 1) })],
      }),
    ]);
    expect(between(links(snapshot), 'a1', 'b1')?.proposed ?? false).toBe(false);
  });

  it('is not even considered beyond flying speed', () => {
    const snapshot = aSnapshot([
      aTally('a', { sections: ['s1'], lines: [aLine('a1', { ...leaving, position: at(0.2, 1) })] }),
      aTally('b', {
        sections: ['s4'],
        lines: [aLine('b1', { ...birds(1200), time: clock('9:12'), position: at(7.8, 1) })],
      }),
    ]);
    expect(links(snapshot)).toEqual([]);
  });

  it('the later sighting is the second, and loses its birds', () => {
    const before = { ...birds(1150), time: clock('8:20'), position: at(2.7, 1), heading: 270 };
    const link = between(
      links(twoSections({ ...leaving, to: null, heading: null }, before)),
      'a1',
      'b1',
    );
    expect(link?.first.lines).toEqual(['b1']);
    expect(link?.second.lines).toEqual(['a1']);
    expect(link?.id).toBe('a1~b1');
  });
});

describe('flocks that flew', () => {
  it('a flushed flock that lands 5 km on after 20 minutes is likelier than one that rested', () => {
    const probability = (activity: TallyLine['activity']) => {
      const snapshot = aSnapshot([
        aTally('a', {
          sections: ['s1'],
          lines: [
            aLine('a1', { ...birds(900), time: clock('9:10'), position: at(0.5, 1), activity }),
            ...otherFlocks('s1', 'x-'),
          ],
        }),
        aTally('b', {
          sections: ['s3'],
          lines: [
            aLine('b1', { ...birds(860), time: clock('9:30'), position: at(5.5, 1) }),
            ...otherFlocks('s3', 'x-'),
          ],
        }),
      ]);
      return between(links(snapshot), 'a1', 'b1')?.probability ?? 0;
    };
    expect(probability('flushed')).toBeGreaterThan(0.5);
    expect(probability('flushed')).toBeGreaterThan(probability('water'));
  });

  it('birds seen flying over between the two speak for the link, and are no sighting themselves', () => {
    const base = twoSections(
      { ...birds(300), time: clock('8:30'), position: at(0.3, 0.3) },
      { ...birds(290), time: clock('9:50'), position: at(3.8, 1.8) },
    );
    const flight = aLine('f1', {
      ...birds(310),
      activity: 'flying-through',
      time: clock('9:15'),
      from: 's1',
      to: 's2',
    });
    const seen = {
      ...base,
      tallies: [...base.tallies, aTally('c', { sections: ['s3'], lines: [flight] })],
    };
    const without = between(links(base), 'a1', 'b1')?.probability ?? 0;
    const withFlight = between(links(seen), 'a1', 'b1');
    expect(withFlight?.probability).toBeGreaterThan(without);
    expect(withFlight?.evidence.map(({ text }) => inEnglish(text)).join('\n')).toContain(
      '310 such birds were seen flying from Section 1 to Section 2',
    );
    expect(links(seen).flatMap(({ lines }) => lines)).not.toContain('f1');
  });
});

describe('flocks with little to tell them apart', () => {
  it('two parties of thirty mallards with nothing else are not proposed', () => {
    const party = {
      written: 'Mallard',
      candidates: ['Anas platyrhynchos'],
      ...birds(30),
      method: 'one-by-one' as const,
      flock: 'by the reeds',
    };
    expect(between(links(twoSections(party, party, false)), 'a1', 'b1')?.proposed ?? false).toBe(
      false,
    );
    expect(between(links(twoSections(party, party)), 'a1', 'b1')?.probability ?? 0).toBeLessThan(
      0.5,
    );
  });

  it('small parties of a common size are not proposed', () => {
    const few = { ...birds(9), time: clock('9:00') };
    const later = { ...birds(9), time: clock('9:10') };
    expect(between(links(twoSections(few, later)), 'a1', 'b1')?.proposed ?? false).toBe(false);
  });

  it('a small party of which both observers noted the place is linked if it is one place', () => {
    const few = (east: number, time: string) => ({
      ...birds(9),
      method: 'one-by-one' as const,
      time: clock(time),
      position: at(east, 1),
    });
    const near = between(links(twoSections(few(1.95, '9:00'), few(2.05, '9:10'))), 'a1', 'b1');
    const far = between(links(twoSections(few(0.5, '9:00'), few(3.5, '9:10'))), 'a1', 'b1');
    expect(near?.kind).toBe('overlap');
    expect(near?.probability).toBeGreaterThan(0.5);
    expect(far?.probability ?? 0).toBeLessThan(0.2);
  });

  it('of two rafts that one may have become, the nearer in number is taken, and both are less sure', () => {
    const arrived = { time: clock('9:40'), position: at(2.7, 1), to: null, heading: null };
    const alone = twoSections({ ...leaving, to: null }, { ...arrived, ...birds(1150) });
    const rival: Snapshot = {
      ...alone,
      tallies: [
        ...alone.tallies.filter(({ id }) => id !== 'b'),
        ...alone.tallies
          .filter(({ id }) => id === 'b')
          .map((tally) => ({
            ...tally,
            lines: [
              ...tally.lines,
              aLine('b2', { ...arrived, ...birds(900), position: at(2.7, 0.8) }),
            ],
          })),
      ],
    };
    const found = links(rival);
    expect(between(found, 'a1', 'b1')).toBeDefined();
    expect(between(found, 'a1', 'b2')).toBeUndefined();
    expect(between(found, 'a1', 'b1')?.probability).toBeLessThan(
      between(links(alone), 'a1', 'b1')?.probability ?? 0,
    );
  });
});

describe('identifications', () => {
  const second = { ...birds(1150), time: clock('9:40'), position: at(2.7, 1) };
  const probabilityOf = (candidates: string[]) =>
    between(links(twoSections(leaving, { ...second, candidates })), 'a1', 'b1')?.probability ?? 0;

  it('that cannot be the same birds are never linked', () => {
    expect(probabilityOf(['Anas platyrhynchos'])).toBe(0);
    expect(probabilityOf(['Branta canadensis'])).toBe(0);
  });

  it('at another resolution weigh less than the same, look-alikes less than these', () => {
    const same = probabilityOf(['Aythya marila']);
    const pair = probabilityOf(['Aythya affinis', 'Aythya marila']);
    const alike = probabilityOf(['Aythya affinis']);
    expect(same).toBeGreaterThan(pair);
    expect(pair).toBeGreaterThan(alike);
    expect(alike).toBeGreaterThan(0);
  });
});

describe('overlapping views', () => {
  const vantages = [
    { id: 'v1', name: 'Pier', position: at(1, 0) },
    { id: 'v2', name: 'Ramp', position: at(3, 0) },
  ];
  const views = (reach: number) => [
    { vantage: 'v1', polygon: box(0, 0, 2 + reach, 2) },
    { vantage: 'v2', polygon: box(2 - reach, 0, 4, 2) },
  ];
  const raft = (reach: number) =>
    aSnapshot(
      [
        aTally('a', {
          sections: ['s1'],
          vantage: 'v1',
          lines: [
            aLine('a1', { ...birds(700), time: clock('9:00'), position: at(1.9, 1) }),
            ...otherFlocks('s1', 'x-'),
          ],
        }),
        aTally('b', {
          sections: ['s2'],
          vantage: 'v2',
          lines: [
            aLine('b1', { ...birds(640), time: clock('9:00'), position: at(2.1, 1.05) }),
            ...otherFlocks('s2', 'x-'),
          ],
        }),
      ],
      { vantages, views: views(reach) },
    );

  it('one raft on the border, seen from both at once, is an overlap', () => {
    const link = between(links(raft(0.5)), 'a1', 'b1');
    expect(link).toMatchObject({ kind: 'overlap', proposed: true, birds: 640 });
  });

  it('is no overlap where the views end at the border', () => {
    const link = between(links(raft(-0.5)), 'a1', 'b1');
    expect(link?.kind).not.toBe('overlap');
  });
});

describe('chains', () => {
  it('a raft seen in three sections is two links, so that its birds are counted once', () => {
    const seen = (section: string, id: string, east: number, time: string, to: string | null) =>
      aTally(id, {
        sections: [section],
        lines: [
          aLine(`${id}1`, {
            ...birds(1000 + 20 * east),
            time: clock(time),
            position: at(east, 1),
            heading: 90,
            to,
          }),
          ...otherFlocks(section, 'x-'),
        ],
      });
    const found = links(
      aSnapshot([
        seen('s1', 'a', 1, '8:30', 's2'),
        seen('s2', 'b', 3, '9:15', 's3'),
        seen('s3', 'c', 5, '10:00', null),
      ]),
    ).filter(({ proposed }) => proposed);
    expect(found.map(({ id }) => id).toSorted()).toEqual(['a1~b1', 'b1~c1']);
    expect(found.map(({ second }) => second.section).toSorted()).toEqual(['s2', 's3']);
  });
});
