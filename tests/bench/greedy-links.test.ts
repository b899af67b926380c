import { describe, expect, it } from 'vitest';
import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import type { Sighting } from '../../server/core/model/result.js';
import { greedyLinks, type Placed } from './greedy-links.js';

/** 40 scaup in a section, at so many minutes past eight, so many hundredths of a degree east. */
const seen = (
  section: string,
  number: number,
  minute: number,
  east: number | null,
  more: Partial<Sighting> = {},
): Placed => {
  const time = `2027-01-16T08:${String(minute).padStart(2, '0')}:00-05:00`;
  const key = `${section} ${number} ${minute}`;
  return {
    key,
    cell: `${section}:w1`,
    window: 'w1',
    sections: [section],
    sighting: {
      cell: `${section}:w1`,
      section,
      lines: [key],
      observers: ['o1'],
      taxon: 'Aythya marila',
      candidates: ['Aythya marila'],
      number,
      start: time,
      end: time,
      position: east === null ? null : [-40 + east / 100, 47],
      ...more,
    },
  };
};

const linked = (...sightings: readonly Placed[]): string[][] =>
  greedyLinks(sightings, defaultProtocol).map(({ lines }) => [...lines]);

describe('the greedy way', () => {
  it('takes the nearest first, each sighting once', () => {
    const [one, near, far] = [seen('s1', 40, 0, 0), seen('s2', 41, 5, 1), seen('s3', 39, 5, 3)];
    expect(linked(one, far, near)).toEqual([['s1 40 0', 's2 41 5']]);
  });

  it('goes by time where a position is lacking, after all that have one', () => {
    const [one, other] = [seen('s1', 40, 0, 0), seen('s2', 40, 5, 1)];
    const [early, late] = [seen('s3', 40, 8, null), seen('s4', 40, 30, null)];
    expect(linked(early, one, late, other)).toEqual([
      ['s1 40 0', 's2 40 5'],
      ['s3 40 8', 's4 40 30'],
    ]);
  });

  it('links nothing of one section, another kind, or a number more than half as high again', () => {
    const one = seen('s1', 40, 0, 0);
    expect(linked(one, seen('s1', 40, 5, 1))).toEqual([]);
    expect(linked(one, seen('s2', 40, 5, 1, { candidates: ['Aythya affinis'] }))).toEqual([]);
    expect(linked(one, seen('s2', 61, 5, 1))).toEqual([]);
    expect(linked(one, seen('s2', 60, 5, 1))).toHaveLength(1);
  });

  it('links nothing that is too far to have flown in the time', () => {
    // 0.2 degrees at 47° N are about 15 km: 9 minutes at 100 km/h, common practice.
    expect(linked(seen('s1', 40, 0, 0), seen('s2', 40, 8, 20))).toEqual([]);
    expect(linked(seen('s1', 40, 0, 0), seen('s2', 40, 10, 20))).toHaveLength(1);
  });
});
