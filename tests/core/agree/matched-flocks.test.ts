import { describe, expect, it } from 'vitest';
import type { Detection } from '../../../server/core/model/agreement.js';
import { inEnglish } from '../../../server/core/model/saying.js';
import type { Snapshot, Tally, TallyLine } from '../../../server/core/model/snapshot.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { reconcile } from '../../../server/core/reconcile.js';
import { aLine, aSnapshot, aTally, at, birds, clock } from '../link/a-count.js';

const SPECIES = [
  'Aythya marila',
  'Anas platyrhynchos',
  'Branta canadensis',
  'Fulica americana',
  'Bucephala albeola',
  'Mergus merganser',
  'Aythya americana',
  'Cygnus olor',
  'Gavia immer',
  'Mareca strepera',
  'Spatula clypeata',
  'Aix sponsa',
] as const;

/** A flock of the species at this place of the list, somewhere of its own, as an observer noted it. */
function flock(
  observer: string,
  place: number,
  number: number,
  change: Partial<TallyLine> = {},
): TallyLine {
  const species = SPECIES[place] ?? '';
  return aLine(`${observer}-${place}${change.id ?? ''}`, {
    written: species,
    candidates: [species],
    method: 'one-by-one',
    ...birds(number),
    time: clock(`8:${String(10 + place)}`),
    position: at(0.2 + 0.12 * place, 0.3 + 0.1 * place),
    ...change,
    ...(change.id === undefined ? {} : { id: `${observer}-${place}${change.id}` }),
  });
}

function tallyOf(
  observer: string,
  lines: readonly TallyLine[],
  change: Partial<Tally> = {},
): Tally {
  return aTally(`t-${observer}`, { observer, party: [observer], lines, ...change });
}

const all = (observer: string, places: readonly number[]): TallyLine[] =>
  places.map((place) => flock(observer, place, 40 + place));

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, index) => from + index);

function detectionIn(
  tallies: readonly Tally[],
  change: Partial<Snapshot> = {},
): readonly Detection[] {
  const people = tallies.map(({ observer }) => ({
    id: observer,
    name: observer,
    roles: ['observer' as const],
  }));
  return reconcile(aSnapshot(tallies, { people, ...change }), [], defaultProtocol).agreement
    .detection;
}

function warningOf(found: Detection | undefined): string {
  const warning = found?.warning ?? null;
  return warning === null ? '' : inEnglish(warning);
}

describe('detection from the flocks of two observers', () => {
  it('counts flocks that one saw and the other did not', () => {
    // Eight seen by both, three by the first alone, one by the second alone.
    const [found, ...none] = detectionIn([
      tallyOf('a', all('a', range(0, 11))),
      tallyOf('b', all('b', [...range(0, 8), 11])),
    ]);
    expect(none).toEqual([]);
    expect(found).toMatchObject({ observers: ['a', 'b'], seen: 12, matched: 8 });
    expect(found?.byObserver[0]?.chance).toMatchObject({ value: 0.888889, n: 9 });
    expect(found?.byObserver[1]?.chance).toMatchObject({ value: 0.727273, n: 11 });
    // Chapman by hand: 12 × 10 / 9 − 1.
    expect(found?.flocks.value).toBeCloseTo(120 / 9 - 1, 6);
    expect(found?.flocks.low).toBeGreaterThanOrEqual(12);
    expect(found?.missedByAll.value).toBeCloseTo(1 - 12 / (120 / 9 - 1), 6);
    expect(warningOf(found)).toContain('harder to see');
  });

  it('takes a flock whose birds the other has in another grouping as seen', () => {
    const halves = [
      flock('a', 11, 60, { id: 'x' }),
      flock('a', 11, 40, { id: 'y', position: at(1.8, 1.8) }),
    ];
    const [found] = detectionIn([
      tallyOf('a', [...all('a', range(0, 8)), ...halves]),
      tallyOf('b', [...all('b', range(0, 8)), flock('b', 11, 100)]),
    ]);
    expect(found?.byObserver.map(({ chance }) => chance.value)).toEqual([1, 1]);
    expect(found?.matched).toBe(found?.seen);
  });

  it('takes a flock that the other has in a plain total as seen, and one not in it as missed', () => {
    const total = (number: number): TallyLine =>
      flock('b', 11, number, { time: null, position: null });
    const seen = (number: number) =>
      detectionIn([
        tallyOf('a', all('a', range(0, 12))),
        tallyOf('b', [...all('b', range(0, 11)), total(number)]),
      ])[0]?.byObserver[1]?.flocks;
    expect(seen(51)).toBe(12);
    expect(seen(5)).toBe(11);
  });

  it('takes two flocks of a kind, each missed by the other observer, as missed', () => {
    const shared = range(0, 9);
    const [found] = detectionIn([
      tallyOf('a', [...all('a', shared), flock('a', 11, 40, { position: at(0.2, 0.2) })]),
      tallyOf('b', [...all('b', shared), flock('b', 11, 150, { position: at(1.8, 1.3) })]),
    ]);
    // The pairing balance has 40 wood ducks of both: that does not make them one flock.
    expect(found).toMatchObject({ seen: 11, matched: 9 });
  });

  it('takes a flock as seen that the other drew into the next one', () => {
    const [found] = detectionIn([
      tallyOf('a', [
        ...all('a', range(0, 9)),
        flock('a', 11, 60),
        flock('a', 11, 20, { id: 'next', position: at(1.8, 1.8) }),
      ]),
      tallyOf('b', [...all('b', range(0, 9)), flock('b', 11, 82)]),
    ]);
    expect(found).toMatchObject({ seen: 11, matched: 11 });
  });

  it('says nothing of observers who share a member, of partial tallies, or from few flocks', () => {
    const lines = [all('a', range(0, 9)), all('b', range(0, 9))] as const;
    expect(
      detectionIn([
        tallyOf('a', lines[0], { party: ['a', 'b'] }),
        tallyOf('b', lines[1], { party: ['a', 'b'] }),
      ]),
    ).toEqual([]);
    expect(
      detectionIn([tallyOf('a', lines[0]), tallyOf('b', lines[1], { coverage: 0.5 })]),
    ).toEqual([]);
    const [few] = detectionIn([
      tallyOf('a', all('a', range(0, 9))),
      tallyOf('b', all('b', range(0, 6))),
    ]);
    expect(few).toMatchObject({ seen: 9, matched: 6, model: null });
    expect(few?.flocks).toEqual({ value: null, low: null, high: null, n: 9 });
    expect(warningOf(few)).toContain('at least 7');
  });

  it('does not mind names of observers or the order of tallies', () => {
    const one = detectionIn([
      tallyOf('a', all('a', range(0, 11))),
      tallyOf('b', all('b', [...range(0, 8), 11])),
    ])[0];
    const other = detectionIn([
      tallyOf('y', all('y', [...range(0, 8), 11])),
      tallyOf('z', all('z', range(0, 11))),
    ])[0];
    expect(other?.flocks).toEqual(one?.flocks);
    expect(other?.byObserver[1]?.chance).toEqual(one?.byObserver[0]?.chance);
  });

  it('takes three observers together, each with a chance of their own', () => {
    const [found] = detectionIn([
      tallyOf('a', all('a', range(0, 10))),
      tallyOf('b', all('b', range(1, 12))),
      tallyOf('c', all('c', [0, 2, 3, 4, 5, 6, 7, 8, 11])),
    ]);
    expect(found?.observers).toEqual(['a', 'b', 'c']);
    expect(found?.seen).toBe(12);
    expect(found?.flocks.value).toBeGreaterThan(12);
    expect(found?.flocks.value).toBeLessThan(13);
  });
});
