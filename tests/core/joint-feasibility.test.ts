import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keyOf, overlaps } from '../../server/core/taxa/candidate-set.js';
import type { Tally } from '../../server/core/model/snapshot.js';
import { reconcile } from '../../server/core/reconcile.js';
import { aCount, aProtocol, aTally, type ShortLine } from './a-count.js';

const SETS = [
  ['Aythya affinis'],
  ['Aythya marila'],
  ['Aythya collaris'],
  ['Aythya affinis', 'Aythya marila'],
  ['Aythya affinis', 'Aythya collaris', 'Aythya marila'],
] as const;

type Stock = readonly { readonly set: readonly string[]; readonly number: number }[];

const stock: fc.Arbitrary<Stock> = fc.uniqueArray(
  fc.record({ set: fc.constantFrom(...SETS), number: fc.integer({ min: 1, max: 3 }) }),
  { selector: (each) => keyOf(each.set), maxLength: 4 },
);

/**
 * The slow way for exact counts: try every matching of single birds; a match that shares no species
 * or a bird left over is one bird wrong. The least of all is what must be wrong.
 */
function fewestWrong(a: Stock, b: Stock): number {
  const birds = (side: Stock): (readonly string[])[] =>
    side.flatMap(({ set, number }) => Array.from({ length: number }, () => set));
  const memo = new Map<string, number>();
  const rightBirds = birds(b);
  const leftBirds = birds(a);
  const best = (index: number, free: readonly (readonly string[])[]): number => {
    const bird = leftBirds[index];
    if (bird === undefined) return free.length;
    const key = `${index} ${free.map(keyOf).sort().join(',')}`;
    const known = memo.get(key);
    if (known !== undefined) return known;
    let least = 1 + best(index + 1, free);
    free.forEach((other, position) => {
      const cost = overlaps(bird, other) ? 0 : 1;
      least = Math.min(
        least,
        cost +
          best(
            index + 1,
            free.filter((_, each) => each !== position),
          ),
      );
    });
    memo.set(key, least);
    return least;
  };
  return best(0, rightBirds);
}

const lines = (side: Stock): ShortLine[] => side.map(({ set, number }) => [set.join('/'), number]);

const conflict = (a: Stock, b: Stock): { feasible: boolean; birds: number } => {
  const result = reconcile(
    aCount([aTally('o1', lines(a)), aTally('o2', lines(b))]),
    [],
    aProtocol(),
  );
  const cell = result.cells[0];
  if (cell === undefined) throw new Error('no cell');
  return { feasible: cell.feasible, birds: cell.birdsInConflict };
};

const birdsIn = (tallies: readonly Tally[]): number => {
  const cells = reconcile(aCount(tallies), [], aProtocol()).cells;
  expect(cells.length).toBe(1);
  return cells[0]?.birdsInConflict ?? -1;
};

describe('joint feasibility of two tallies', () => {
  it('equals an exhaustive search for counts without counting error', () => {
    fc.assert(
      fc.property(stock, stock, (a, b) => {
        const total = (side: Stock): number => side.reduce((sum, each) => sum + each.number, 0);
        fc.pre(total(a) <= 6 && total(b) <= 6);
        const { feasible, birds } = conflict(a, b);
        expect(birds).toBe(fewestWrong(a, b));
        expect(feasible).toBe(birds === 0);
      }),
      { numRuns: 400 },
    );
  });

  it('fits a species with a pair that holds it, not with another species', () => {
    const pair = [{ set: SETS[3], number: 3 }];
    expect(conflict([{ set: SETS[0], number: 3 }], pair)).toEqual({ feasible: true, birds: 0 });
    expect(conflict([{ set: SETS[2], number: 3 }], pair)).toEqual({ feasible: false, birds: 3 });
  });

  it('does not ask for what was seen but not counted', () => {
    const present: ShortLine = ['Mallard', null];
    const of = (a: ShortLine[], b: ShortLine[]): number =>
      birdsIn([aTally('o1', a), aTally('o2', b)]);
    expect(of([present], [['Mallard', 400]])).toBe(0);
    expect(of([present], [])).toBe(1);
    expect(of([present], [['Mallard', 0]])).toBe(1);
  });

  it('asks nobody for birds that may be of a species they did not set out to count', () => {
    const scope = { kind: 'taxa', species: ['Aythya affinis'] } as const;
    const pair: ShortLine[] = [['Greater/Lesser Scaup', 5]];
    const of = (lines: ShortLine[]): number =>
      birdsIn([aTally('o1', pair), aTally('o2', lines, { scope })]);
    expect(of([])).toBe(0);
    expect(of([['Lesser Scaup', 5]])).toBe(0);
    expect(of([['Lesser Scaup', 7]])).toBe(2);
  });

  it('lets block counts differ by their counting error', () => {
    // 20 % at two standard deviations: 400 may be up to 400 · e^(2 · 0.198) = 594.
    const block = (number: number): ShortLine[] => [['Greater Scaup', number, { method: 'block' }]];
    const of = (a: number, b: number): number =>
      reconcile(aCount([aTally('o1', block(a)), aTally('o2', block(b))]), [], aProtocol()).cells[0]
        ?.birdsInConflict ?? -1;
    expect(of(400, 560)).toBe(0);
    expect(of(400, 2000)).toBeGreaterThan(500);
  });
});

describe('joint feasibility of three and more tallies', () => {
  const mallards = (observer: string, number: number, more = {}): Tally =>
    aTally(observer, number === 0 ? [] : [['Mallard', number]], more);

  it('adds up what each observer has wrong under the truth that is best for all', () => {
    // The truth is what two of three have: 5.
    expect(birdsIn([mallards('o1', 5), mallards('o2', 5), mallards('o3', 9)])).toBe(4);
    // The middle: one misses 2, another has 4 too many.
    expect(birdsIn([mallards('o1', 3), mallards('o2', 5), mallards('o3', 9)])).toBe(6);
    // Ten birds with three names are misnamed by two of three.
    const names = ['Greater Scaup', 'Lesser Scaup', 'Redhead'];
    expect(birdsIn(names.map((name, index) => aTally(`o${index + 1}`, [[name, 10]])))).toBe(20);
  });

  it('finds that every two fit but not all three', () => {
    const two = (observer: string, taxon: string): Tally => aTally(observer, [[taxon, 10]]);
    const all = [
      two('o1', 'Greater/Lesser Scaup'),
      two('o2', 'Lesser Scaup/Redhead'),
      two('o3', 'Greater Scaup/Redhead'),
    ];
    for (const left of all) expect(birdsIn(all.filter((each) => each !== left))).toBe(0);
    expect(birdsIn(all)).toBe(10);
  });

  it('holds the tally of a whole against those of its parts', () => {
    const whole = { sections: ['s1', 's2'] };
    const part = (section: string) => ({ sections: [section] });
    const of = (a: number, b: number, both: number): number =>
      birdsIn([
        mallards('o1', a, part('s1')),
        mallards('o2', b, part('s2')),
        mallards('o3', both, whole),
      ]);
    expect(of(4, 3, 7)).toBe(0);
    expect(of(4, 3, 9)).toBe(2);
    expect(of(4, 3, 5)).toBe(2);
    // One part alone leaves the rest open upwards, not downwards.
    const alone = (a: number, both: number): number =>
      birdsIn([mallards('o1', a, part('s1')), mallards('o3', both, whole)]);
    expect([alone(4, 9), alone(4, 4), alone(4, 3)]).toEqual([0, 0, 1]);
  });

  it('is no conflict where tallies differ only by how finely they identify one truth', () => {
    const names = ['Aythya affinis', 'Aythya marila', 'Aythya collaris', 'Aythya americana'];
    const wider = fc.subarray(names, { minLength: 0 });
    // For each true bird, for each observer: the other species that they could not rule out.
    const flock = fc.array(
      fc.record({ species: fc.nat(3), others: fc.array(wider, { minLength: 4, maxLength: 4 }) }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(flock, fc.integer({ min: 2, max: 4 }), (birds, observers) => {
        const tallies = Array.from({ length: observers }, (_, observer) => {
          const numbers = new Map<string, number>();
          for (const { species, others } of birds) {
            const set = new Set([names[species] ?? '', ...(others[observer] ?? [])]);
            const taxon = [...set].sort().join('/');
            numbers.set(taxon, (numbers.get(taxon) ?? 0) + 1);
          }
          return aTally(`o${observer + 1}`, [...numbers]);
        });
        const cell = reconcile(aCount(tallies), [], aProtocol()).cells[0];
        expect([cell?.birdsInConflict, cell?.feasible, cell?.witness]).toEqual([0, true, null]);
      }),
      { numRuns: 200 },
    );
  });

  it('does not depend on the order of observers', () => {
    fc.assert(
      fc.property(fc.array(stock, { minLength: 3, maxLength: 3 }), (stocks) => {
        const of = (order: readonly Stock[]): number =>
          birdsIn(order.map((each, index) => aTally(`o${index + 1}`, lines(each))));
        expect(of([...stocks].reverse())).toBe(of(stocks));
      }),
      { numRuns: 100 },
    );
  });
});
