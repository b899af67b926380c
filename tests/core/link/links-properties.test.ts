import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findLinks } from '../../../server/core/link/find-links.js';
import type { Snapshot, Tally, TallyLine } from '../../../server/core/model/snapshot.js';
import { aLine, aSnapshot, aTally, at, birds, cellOf, clock, protocol } from './a-count.js';

const SETS = [
  ['Aythya marila'],
  ['Aythya affinis'],
  ['Aythya affinis', 'Aythya marila'],
  ['Anas platyrhynchos'],
];

const aRandomLine = fc.record({
  set: fc.constantFrom(...SETS),
  number: fc.integer({ min: 5, max: 800 }),
  minute: fc.option(fc.integer({ min: 0, max: 170 }), { nil: null }),
  place: fc.option(
    fc.record({
      east: fc.double({ min: 0, max: 8, noNaN: true }),
      north: fc.double({ min: 0, max: 2, noNaN: true }),
    }),
    { nil: null },
  ),
  heading: fc.option(fc.integer({ min: 0, max: 359 }), { nil: null }),
  to: fc.option(fc.constantFrom('s1', 's2', 's3', 's4'), { nil: null }),
  label: fc.option(fc.constantFrom('one', 'two'), { nil: null }),
  activity: fc.constantFrom<TallyLine['activity'][]>('water', 'land', 'flushed', 'flying-through'),
});

const snapshots = fc
  .array(
    fc.record({
      sections: fc.constantFrom(['s1'], ['s2'], ['s3'], ['s4'], ['s3', 's4']),
      observer: fc.constantFrom('Ada', 'Bo', 'Cy', 'Di'),
      lines: fc.array(aRandomLine, { maxLength: 5 }),
    }),
    { minLength: 2, maxLength: 5 },
  )
  .map((tallies) =>
    aSnapshot(
      tallies.map(({ sections, observer, lines }, tally) =>
        aTally(`t${tally}`, {
          sections,
          observer,
          lines: lines.map((line, index) =>
            aLine(`t${tally}:${index}`, {
              candidates: line.set,
              ...birds(line.number),
              time:
                line.minute === null
                  ? null
                  : clock(
                      `${8 + Math.floor(line.minute / 60)}:${String(line.minute % 60).padStart(2, '0')}`,
                    ),
              position: line.place === null ? null : at(line.place.east, line.place.north),
              heading: line.heading,
              to: line.to,
              flock: line.label,
              activity: line.activity,
            }),
          ),
        }),
      ),
    ),
  );

// Merged tallies join their sections into one cell, as alignment does.
const joined = (tally: Tally) =>
  tally.sections.some((id) => id === 's3' || id === 's4') ? 's3+s4:w1' : cellOf(tally);
const bytes = (snapshot: Snapshot) => JSON.stringify(findLinks(snapshot, joined, protocol));

describe('findLinks on random counts', () => {
  it('does not depend on the order of tallies and lines', () => {
    fc.assert(
      fc.property(snapshots, (snapshot) => {
        const turned: Snapshot = {
          ...snapshot,
          sections: snapshot.sections.toReversed(),
          tallies: snapshot.tallies
            .toReversed()
            .map((tally) => ({ ...tally, lines: tally.lines.toReversed() })),
        };
        expect(bytes(turned)).toBe(bytes(snapshot));
      }),
      { numRuns: 60 },
    );
  });

  it('does not depend on what observers are called', () => {
    const names: Record<string, string> = { Ada: 'Zoe', Bo: 'Yan', Cy: 'Xi', Di: 'Will' };
    fc.assert(
      fc.property(snapshots, (snapshot) => {
        const renamed: Snapshot = {
          ...snapshot,
          tallies: snapshot.tallies.map((tally) => {
            const observer = names[tally.observer] ?? tally.observer;
            return { ...tally, observer, party: [observer] };
          }),
        };
        const anonymous = (each: Snapshot) =>
          findLinks(each, joined, protocol).map((link) => ({
            ...link,
            first: { ...link.first, observers: link.first.observers.length },
            second: { ...link.second, observers: link.second.observers.length },
          }));
        expect(anonymous(renamed)).toEqual(anonymous(snapshot));
      }),
      { numRuns: 60 },
    );
  });

  it('gives links of different sections, with probabilities and whole birds, no more than there are, in no ring', () => {
    fc.assert(
      fc.property(snapshots, (snapshot) => {
        const found = findLinks(snapshot, joined, protocol);
        // Of several links of one sighting each takes other birds; counts err by half at most here.
        for (const side of ['first', 'second'] as const) {
          const taken = new Map<string, { birds: number; number: number; links: number }>();
          for (const link of found) {
            const key = link[side].lines.join('+');
            const before = taken.get(key) ?? { birds: 0, number: link[side].number, links: 0 };
            taken.set(key, {
              ...before,
              birds: before.birds + link.birds,
              links: before.links + 1,
            });
          }
          for (const { birds: sum, number, links: several } of taken.values()) {
            if (several > 1) expect(sum).toBeLessThanOrEqual(2.8 * number + 1);
          }
        }
        expect(new Set(found.map(({ id }) => id)).size).toBe(found.length);
        for (const link of found) {
          expect(link.probability).toBeGreaterThanOrEqual(0.05);
          expect(link.probability).toBeLessThanOrEqual(1);
          expect(link.proposed).toBe(link.probability >= protocol.linkThreshold);
          expect(link.first.cell).not.toBe(link.second.cell);
          expect(link.birds).toBe(Math.min(link.first.number, link.second.number));
          expect(Number.isInteger(link.birds)).toBe(true);
          expect(link.evidence.every(({ weight }) => Number.isFinite(weight))).toBe(true);
          expect(link.id).toBe(
            [link.first.lines.join('+'), link.second.lines.join('+')].toSorted().join('~'),
          );
        }
        // Following links from the first sighting of any never leads back to it.
        const next = new Map<string, string[]>();
        for (const { first, second } of found) {
          const key = first.lines.join('+');
          next.set(key, [...(next.get(key) ?? []), second.lines.join('+')]);
        }
        for (const start of next.keys()) {
          const reached = new Set<string>();
          const open = [...(next.get(start) ?? [])];
          for (let here = open.pop(); here !== undefined; here = open.pop()) {
            if (reached.has(here)) continue;
            reached.add(here);
            open.push(...(next.get(here) ?? []));
          }
          expect(reached.has(start)).toBe(false);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('leaves its input as it was', () => {
    fc.assert(
      fc.property(snapshots, (snapshot) => {
        const before = JSON.stringify(snapshot);
        bytes(snapshot);
        expect(JSON.stringify(snapshot)).toBe(before);
      }),
      { numRuns: 20 },
    );
  });
});
