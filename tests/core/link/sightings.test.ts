import { describe, expect, it } from 'vitest';
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

/* Facts of the trade (common practice, no source): which records of a section are one flock. */

function keysOf(...tallies: TallyLine[][]): string[] {
  const snapshot = aSnapshot(tallies.map((lines, index) => aTally(`t${index}`, { lines })));
  return sightingsOf(snapshot, cellOf, protocol).map(({ key }) => key);
}

describe('sightingsOf', () => {
  const raft = (id: string, number: number, change: Partial<TallyLine> = {}) =>
    aLine(id, { ...birds(number), time: clock('9:00'), position: at(1, 1), ...change });

  it('a raft that two observers saw is one sighting, with their mean number', () => {
    const snapshot = aSnapshot([
      aTally('t1', { lines: [raft('a', 1000)] }),
      aTally('t2', {
        lines: [
          raft('b', 1301, {
            time: clock('9:20'),
            position: at(1.1, 1.1),
            candidates: ['Aythya affinis', 'Aythya marila'],
          }),
        ],
      }),
    ]);
    const [sighting, ...none] = sightingsOf(snapshot, cellOf, protocol);
    expect(none).toEqual([]);
    expect(sighting?.sighting).toMatchObject({
      cell: 's1:w1',
      section: 's1',
      lines: ['a', 'b'],
      observers: ['observer-t1', 'observer-t2'],
      number: 1151,
      taxon: 'Aythya marila',
      start: clock('9:00'),
      end: clock('9:20'),
    });
  });

  it('three observers, each with two rafts: two sightings of three', () => {
    const two = (name: string, error: number) => [
      raft(`${name}1`, 1000 * error),
      raft(`${name}2`, 90 * error, { position: at(0.3, 1.8) }),
    ];
    expect(keysOf(two('a', 1), two('b', 1.2), two('c', 0.9))).toEqual(['a1+b1+c1', 'a2+b2+c2']);
  });

  it('birds of other kinds, or far from alike in number, are other flocks', () => {
    expect(keysOf([raft('a', 1000)], [raft('b', 1000, { candidates: ['Anas acuta'] })])).toEqual([
      'a',
      'b',
    ]);
    expect(keysOf([raft('a', 1000)], [raft('b', 40)])).toEqual(['a', 'b']);
  });

  it('two flocks of one tally stay two, however alike', () => {
    expect(keysOf([raft('a1', 100), raft('a2', 100)], [raft('b', 100)])).toHaveLength(2);
  });

  it('lines under one flock label are one mixed raft', () => {
    const mixed = (name: string) => [
      raft(`${name}1`, 700, { flock: 'Big raft' }),
      raft(`${name}2`, 200, { flock: 'big raft ', candidates: ['Aythya americana'] }),
    ];
    const snapshot = aSnapshot([
      aTally('t1', { lines: mixed('a') }),
      aTally('t2', { lines: mixed('b') }),
    ]);
    const [sighting, ...none] = sightingsOf(snapshot, cellOf, protocol);
    expect(none).toEqual([]);
    expect(sighting?.sighting.number).toBe(900);
    expect(sighting?.sighting.candidates).toEqual(['Aythya americana', 'Aythya marila']);
  });

  it('leaves out birds flying through, birds not counted, and a few birds of which nothing is noted', () => {
    const lines = [
      raft('flying', 500, { activity: 'flying-through' }),
      aLine('few', birds(9)),
      aLine('present', { quantity: { kind: 'present' }, flock: 'far out' }),
    ];
    expect(keysOf(lines)).toEqual([]);
  });

  it('takes the section that the position lies in, where a tally covers several', () => {
    const snapshot = aSnapshot([
      aTally('t1', { sections: ['s1', 's2'], lines: [raft('a', 500, { position: at(3, 1) })] }),
      aTally('t2', {
        sections: ['s3', 's4'],
        lines: [aLine('b', { ...birds(500), time: clock('9:00') })],
      }),
    ]);
    expect(sightingsOf(snapshot, cellOf, protocol).map(({ sections }) => sections)).toEqual([
      ['s2'],
      ['s3', 's4'],
    ]);
  });

  it('keeps the flocks of a busy morning apart', () => {
    const found = keysOf(otherFlocks('s1', 'a-'), otherFlocks('s1', 'b-'));
    expect(found).toEqual([0, 1, 2, 3, 4, 5].map((index) => `a-s1-${index}+b-s1-${index}`));
  });
});
