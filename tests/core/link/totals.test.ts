import { describe, expect, it } from 'vitest';
import { findLinks } from '../../../server/core/link/find-links.js';
import { sightingsOf } from '../../../server/core/link/sightings.js';
import type { TallyLine } from '../../../server/core/model/snapshot.js';
import {
  aLine,
  aSnapshot,
  aTally,
  at,
  birds,
  cellOf,
  clock,
  otherFlocks,
  protocol,
} from './a-count.js';
import { inEnglish } from '../../../server/core/model/saying.js';

/*
 * Facts of the trade (common practice, no source): "4,200 scaup in section 3" may be one raft or many
 * flocks, and some of these may have been counted next door.
 */

const scaup = { written: 'Aythya affinis/marila', candidates: ['Aythya affinis', 'Aythya marila'] };
const total = (id: string, number: number, change: Partial<TallyLine> = {}) =>
  aLine(id, { ...scaup, ...birds(number), ...change });
const flock = (id: string, number: number, change: Partial<TallyLine> = {}) =>
  total(id, number, { time: clock('9:30'), position: at(2.3, 1), ...change });

const keysOf = (...tallies: TallyLine[][]): string[] =>
  sightingsOf(
    aSnapshot(tallies.map((lines, index) => aTally(`t${index}`, { lines }))),
    cellOf,
    protocol,
  ).map(({ key }) => key);

/** Section 3's total and a flock of section 4, with other flocks about. */
function linkOf(totals: readonly TallyLine[], seen: TallyLine) {
  const snapshot = aSnapshot([
    aTally('a', { sections: ['s1'], lines: [...totals, ...otherFlocks('s1', 'x-').slice(0, 5)] }),
    aTally('b', { sections: ['s2'], lines: [seen, ...otherFlocks('s2', 'x-').slice(0, 5)] }),
  ]);
  return findLinks(snapshot, cellOf, protocol).find(({ lines }) => lines.includes(seen.id));
}

describe('the undivided total of a section', () => {
  it('is a sighting, all lines of one identification in a tally together', () => {
    expect(keysOf([total('a', 3000), total('b', 1200)])).toEqual(['a+b']);
    expect(keysOf([total('a', 3000), aLine('b', birds(40))])).toEqual(['a', 'b']);
  });

  it('is one sighting for all observers of the section who give one', () => {
    expect(keysOf([total('a', 4200)], [total('b', 3900)])).toEqual(['a+b']);
  });

  it('stands back where another observer has most of its birds flock by flock', () => {
    const flocks = [flock('f1', 2500), flock('f2', 1400, { time: clock('8:20') })];
    expect(keysOf([total('a', 4200)], flocks)).toEqual(['f1', 'f2']);
    expect(keysOf([total('a', 42_000)], flocks)).toEqual(['a', 'f1', 'f2']);
  });

  it('stands for several flocks, at most ten, and for one where it is no larger than one', () => {
    const held = (number: number) =>
      sightingsOf(
        aSnapshot([aTally('a', { lines: [total('t', number), ...otherFlocks('s1', 'x')] })]),
        cellOf,
        protocol,
      ).find(({ isTotal }) => isTotal)?.holds;
    expect(held(20)).toBe(1);
    expect(held(300)).toBeGreaterThan(3);
    expect(held(300)).toBeLessThan(6);
    expect(held(42_000)).toBe(10);
  });

  it('may have lent a flock that says where it came from: a share of its birds', () => {
    const link = linkOf([total('t', 4200)], flock('f', 350, { from: 's1', heading: 90 }));
    expect(link).toMatchObject({ kind: 'movement', birds: 350, proposed: true });
    expect(link?.first.number).toBe(4200);
    expect(link?.evidence.map(({ text }) => inEnglish(text))).toContain(
      '4200 and 350 birds: the one is all of its section, the other may be a flock of these',
    );
  });

  it('makes the flocks of its section a round number in words', () => {
    const snapshot = aSnapshot([
      aTally('a', { sections: ['s1'], lines: [flock('f', 350, { to: 's2', heading: 90 })] }),
      aTally('b', {
        sections: ['s2'],
        lines: [
          flock('g', 330, { time: clock('9:50') }),
          aLine('t', birds(300)),
          ...otherFlocks('s2', 'x-').slice(0, 5),
        ],
      }),
    ]);
    const link = findLinks(snapshot, cellOf, protocol).find(({ lines }) => lines.includes('g'));
    expect(link?.evidence.map(({ text }) => inEnglish(text))).toContainEqual(
      expect.stringMatching(/^it is one of about \d+ flocks in Section 2$/u),
    );
  });

  it('is no reason by itself to propose that a flock next door is part of it', () => {
    expect(linkOf([total('t', 4200)], flock('f', 350))?.proposed ?? false).toBe(false);
  });

  it('cannot hold a flock that is much larger than it', () => {
    expect(linkOf([total('t', 40)], flock('f', 350, { from: 's1', heading: 90 }))).toBeUndefined();
  });

  it('is not one raft with a like total elsewhere merely because nothing else is known', () => {
    const links = findLinks(
      aSnapshot([
        aTally('a', { sections: ['s1'], lines: [aLine('a1', birds(1200))] }),
        aTally('b', { sections: ['s2'], lines: [aLine('b1', birds(1200))] }),
      ]),
      cellOf,
      protocol,
    );
    expect(links.filter(({ proposed }) => proposed)).toEqual([]);
  });
});
