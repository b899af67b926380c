import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Disagreement } from '../../../server/core/model/result.js';
import { aCount, aProtocol, aTally, type ShortLine } from '../a-count.js';
import { reconcileInEnglish as reconcile } from '../../support/reconcile-in-english.js';

function subCounts(
  one: readonly ShortLine[],
  other: readonly ShortLine[],
  more = {},
): Disagreement<string>[] {
  const snapshot = aCount([aTally('o1', one), aTally('o2', other, more)]);
  return reconcile(snapshot, [], aProtocol()).disagreements.filter(
    ({ kind }) => kind === 'sub-counts',
  );
}

describe('sub-counts', () => {
  it('questions sexes that differ beyond error, with the birds paired with the other sex', () => {
    // Best pairing: 46 males and 52 females agree; 18 males of o1 are left for 18 females of o2.
    // Odds 64.5/52.5 against 46.5/70.5: ln ratio 0.622; 1/64.5 + 1/52.5 + 1/46.5 + 1/70.5 = 0.0703,
    // counting error 5 % of each of the four 4 · 0.0025 = 0.01; z = 0.622 / √0.0803 = 2.2.
    const [found, ...others] = subCounts(
      [['Mallard', 116, { male: 64, female: 52 }]],
      [['Mallard', 116, { male: 46, female: 70 }]],
    );
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      id: 'sub-counts:s1:w1:Anas platyrhynchos:sex',
      severity: 'questioned',
      birds: 18,
      group: ['Anas platyrhynchos'],
      observers: ['o1', 'o2'],
      lines: ['t-o1:1', 't-o2:1'],
      text: 'o1 counted 64 male and 52 female Mallard in North arm and o2 46 and 70: 18 birds sexed differently, more than chance and counting error explain.',
    });
  });

  it('lets birds of unknown sex pair with either', () => {
    // o2 sexed 60 of 116: its 56 others may be o1's males.
    expect(
      subCounts(
        [['Mallard', 116, { male: 84, female: 32 }]],
        [['Mallard', 116, { male: 28, female: 32 }]],
      ),
    ).toEqual([]);
  });

  it('says nothing of differences that chance explains, nor of numbers that differ with equal shares', () => {
    expect(
      subCounts([['Mallard', 8, { male: 5, female: 3 }]], [['Mallard', 8, { male: 3, female: 5 }]]),
    ).toEqual([]);
    expect(
      subCounts(
        [['Mallard', 400, { male: 200, female: 200 }]],
        [['Mallard', 200, { male: 100, female: 100 }]],
      ),
    ).toEqual([]);
  });

  it('compares ages in the same way, apart from sexes', () => {
    const found = subCounts(
      [['Mute Swan', 60, { male: 30, female: 30, adult: 50, immature: 10 }]],
      [['Mute Swan', 60, { male: 30, female: 30, adult: 20, immature: 40 }]],
    );
    expect(found).toMatchObject([{ id: 'sub-counts:s1:w1:Cygnus olor:age', birds: 30 }]);
    expect(found[0]?.text).toContain('50 adult and 10 immature Mute Swan');
  });

  it('says nothing where only one observer divides the birds, saw a part, or shares a member', () => {
    const one: ShortLine[] = [['Mallard', 116, { male: 100, female: 16 }]];
    const other: ShortLine[] = [['Mallard', 116, { male: 16, female: 100 }]];
    expect(subCounts(one, other)).toHaveLength(1);
    expect(subCounts(one, [['Mallard', 116]])).toEqual([]);
    expect(subCounts(one, other, { coverage: 0.6 })).toEqual([]);
    expect(subCounts(one, other, { party: ['o1', 'o2'] })).toEqual([]);
  });

  it('is settled by letting the draft stand', () => {
    const snapshot = aCount([
      aTally('o1', [['Mallard', 116, { male: 100, female: 16 }]]),
      aTally('o2', [['Mallard', 116, { male: 16, female: 100 }]]),
    ]);
    const [found] = reconcile(snapshot, [], aProtocol()).disagreements.filter(
      ({ kind }) => kind === 'sub-counts',
    );
    const [proposal] = found?.proposals ?? [];
    if (found === undefined || proposal === undefined) throw new Error('nothing is proposed');
    const ruled = reconcile(
      snapshot,
      [{ ...proposal, id: 'r1', by: 'o3', reason: 'Eclipse plumage', basis: found.basis }],
      aProtocol(),
    );
    expect(ruled.disagreements.find(({ id }) => id === found.id)?.ruledBy).toBe('r1');
  });

  it('never has more birds at stake than could be sexed differently (property)', () => {
    const sexed = fc
      .tuple(fc.nat({ max: 200 }), fc.nat({ max: 200 }), fc.nat({ max: 200 }))
      .map(([male, female, unknown]) => ({ male, female, number: male + female + unknown }));
    fc.assert(
      fc.property(sexed, sexed, (a, b) => {
        const [found] = subCounts(
          [['Mallard', a.number, { male: a.male, female: a.female }]],
          [['Mallard', b.number, { male: b.male, female: b.female }]],
        );
        if (found === undefined) return;
        const most = Math.min(a.male, b.female) + Math.min(a.female, b.male);
        expect(found.birds).toBeGreaterThan(0);
        expect(found.birds).toBeLessThanOrEqual(most);
      }),
      { numRuns: 100 },
    );
  });
});
