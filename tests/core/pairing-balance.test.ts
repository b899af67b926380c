import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  pairingBalance,
  type Balance,
  type Stock,
} from '../../server/core/compare/pairing-balance.js';
import { keyOf, lookAlikesFrom } from '../../server/core/taxa/candidate-set.js';
import { exhaustiveBalance } from './exhaustive-balance.js';

const SPECIES = ['Aythya affinis', 'Aythya collaris', 'Aythya marila'];
const LOOK_ALIKES = lookAlikesFrom([['Aythya affinis', 'Aythya marila']]);

const totals = (balance: Balance): Record<string, number> => ({
  agreed: balance.agreed,
  compatible: balance.compatible,
  differently: balance.differently,
  onlyA: balance.onlyA,
  onlyB: balance.onlyB,
});

const birds = (stock: readonly Stock[]): number =>
  stock.reduce((sum, each) => sum + each.number, 0);

/** Stocks with each candidate set at most once, as the engine makes them. */
const stockOf = (most: number, species = SPECIES): fc.Arbitrary<Stock[]> =>
  fc.uniqueArray(
    fc.record({
      candidates: fc.subarray(species, { minLength: 1 }).map((set) => [...set].sort()),
      number: fc.nat({ max: most }),
    }),
    { selector: (each) => keyOf(each.candidates), maxLength: 7 },
  );

describe('pairing balance', () => {
  it('pairs the same first, then what shares a species, then look-alikes (worked example)', () => {
    const balance = pairingBalance(
      [
        { candidates: ['Aythya marila'], number: 300 },
        { candidates: ['Aythya affinis'], number: 40 },
        { candidates: ['Aythya affinis', 'Aythya marila'], number: 60 },
        { candidates: ['Aythya americana'], number: 12 },
        { candidates: ['Aythya valisineria'], number: 5 },
      ],
      [
        { candidates: ['Aythya marila'], number: 350 },
        { candidates: ['Aythya affinis'], number: 10 },
        { candidates: ['Aythya affinis', 'Aythya marila'], number: 80 },
        { candidates: ['Aythya americana'], number: 12 },
        { candidates: ['Anas platyrhynchos'], number: 7 },
      ],
      LOOK_ALIKES,
    );
    expect(totals(balance)).toEqual({
      agreed: 382,
      compatible: 20,
      differently: 10,
      onlyA: 5,
      onlyB: 47,
    });
  });

  it('never breaks an agreed pair to make a doubtful one', () => {
    // 10 greater scaup agreed leaves nothing for the 10 pairs, although 20 pairs could be made.
    const balance = pairingBalance(
      [{ candidates: ['Aythya marila'], number: 10 }],
      [
        { candidates: ['Aythya marila'], number: 10 },
        { candidates: ['Aythya affinis', 'Aythya marila'], number: 10 },
      ],
      LOOK_ALIKES,
    );
    expect(totals(balance)).toMatchObject({ agreed: 10, compatible: 0, onlyB: 10 });
  });

  it('prefers two compatible pairs at a distance to one that is close', () => {
    // "a/b" could take the near "a", but then "a/b/c" … is left with nothing that shares a species.
    const balance = pairingBalance(
      [
        { candidates: ['a', 'b'], number: 1 },
        { candidates: ['a'], number: 1 },
      ],
      [
        { candidates: ['a', 'c'], number: 1 },
        { candidates: ['b', 'c', 'd', 'e'], number: 1 },
      ],
      new Map(),
    );
    expect(totals(balance)).toMatchObject({ compatible: 2, onlyA: 0, onlyB: 0 });
  });

  it('shares birds out in proportion where several pairings are equally good', () => {
    const balance = pairingBalance(
      [
        { candidates: ['a', 'c'], number: 30 },
        { candidates: ['b', 'c'], number: 10 },
      ],
      [{ candidates: ['c', 'd'], number: 20 }],
      new Map(),
    );
    const compatible = balance.flows.filter((flow) => flow.kind === 'compatible');
    expect(compatible.map((flow) => flow.number)).toEqual([15, 5]);
  });

  it('equals an exhaustive search over all pairings of single birds on small cases', () => {
    fc.assert(
      fc.property(stockOf(3), stockOf(3), (a, b) => {
        fc.pre(birds(a) <= 6 && birds(b) <= 6);
        expect(totals(pairingBalance(a, b, LOOK_ALIKES))).toEqual(
          exhaustiveBalance(a, b, LOOK_ALIKES),
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('adds up to each observer’s total, flow by flow', () => {
    fc.assert(
      fc.property(stockOf(5000), stockOf(5000), (a, b) => {
        const balance = pairingBalance(a, b, LOOK_ALIKES);
        const paired = balance.agreed + balance.compatible + balance.differently;
        expect(paired + balance.onlyA).toBe(birds(a));
        expect(paired + balance.onlyB).toBe(birds(b));
        for (const stock of a) {
          const given = balance.flows
            .filter((flow) => flow.a !== null && keyOf(flow.a) === keyOf(stock.candidates))
            .reduce((sum, flow) => sum + flow.number, 0);
          expect(given).toBeCloseTo(stock.number, 5);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('is the same the other way round and in any order of lines', () => {
    fc.assert(
      fc.property(stockOf(50), stockOf(50), (a, b) => {
        const there = pairingBalance(a, b, LOOK_ALIKES);
        const back = pairingBalance([...b].reverse(), [...a].reverse(), LOOK_ALIKES);
        expect(totals(back)).toEqual({ ...totals(there), onlyA: there.onlyB, onlyB: there.onlyA });
        const flowsOf = (balance: Balance, swap: boolean): string[] =>
          balance.flows
            .map((flow) => {
              const [one, other] = swap ? [flow.b, flow.a] : [flow.a, flow.b];
              return `${one?.join('|') ?? '-'} ${other?.join('|') ?? '-'} ${flow.number.toFixed(3)}`;
            })
            .sort();
        expect(flowsOf(back, true)).toEqual(flowsOf(there, false));
      }),
      { numRuns: 300 },
    );
  });
});
