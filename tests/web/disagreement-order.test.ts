import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RulingState, Severity } from '../../web/src/graphql/generated/graphql.js';
import {
  inOrderOfWork,
  isSettled,
  matching,
  noFilter,
  type Orderable,
} from '../../web/src/reviews/disagreement-order.js';

function disagreement(change: Partial<Orderable> & { readonly id: string }): Orderable {
  return {
    kind: 'count-spread',
    severity: 'NOTE',
    birds: 10,
    cell: { id: 's1' },
    group: { id: 'g1' },
    ruling: null,
    ...change,
  };
}

const settledOne = { state: 'APPLIED' as const };

describe('order of work', () => {
  test('most birds at stake first, then the more severe, settled ones last', () => {
    const given = [
      disagreement({ id: 'few', birds: 3, severity: 'SERIOUS' }),
      disagreement({ id: 'settled', birds: 900, ruling: settledOne }),
      disagreement({ id: 'note', birds: 40, severity: 'NOTE' }),
      disagreement({ id: 'serious', birds: 40, severity: 'SERIOUS' }),
      disagreement({ id: 'most', birds: 705 }),
      disagreement({ id: 'waiting', birds: 50, ruling: { state: 'NEEDS_SECOND' } }),
      disagreement({ id: 'to be known', birds: 4257, group: null }),
      disagreement({ id: 'link', birds: 45, group: null, link: { id: 'l1' } }),
    ];
    expect(inOrderOfWork(given).map(({ id }) => id)).toEqual([
      'most',
      'waiting',
      'link',
      'serious',
      'note',
      'few',
      'to be known',
      'settled',
    ]);
  });

  test('only an applied ruling settles', () => {
    const states: readonly RulingState[] = [
      'APPLIED',
      'NEEDS_SECOND',
      'STALE',
      'WITHOUT_TARGET',
      'WITHDRAWN',
      'REPLACED',
    ];
    expect(states.filter((state) => isSettled({ ruling: { state } }))).toEqual(['APPLIED']);
    expect(isSettled({ ruling: null })).toBe(false);
  });

  test('filters narrow, and settled ones come back when asked for', () => {
    const given = [
      disagreement({ id: 'a', severity: 'SERIOUS' }),
      disagreement({ id: 'b', kind: 'seen-by-one' }),
      disagreement({ id: 'c', cell: { id: 's2' } }),
      disagreement({ id: 'd', ruling: settledOne }),
      disagreement({ id: 'e', cell: null }),
    ];
    const ids = (filter: Partial<typeof noFilter>): string[] =>
      matching(given, { ...noFilter, ...filter }).map(({ id }) => id);
    expect(ids({})).toEqual(['a', 'b', 'c', 'e']);
    expect(ids({ showSettled: true })).toEqual(['a', 'b', 'c', 'd', 'e']);
    expect(ids({ severity: 'SERIOUS' })).toEqual(['a']);
    expect(ids({ kind: 'seen-by-one' })).toEqual(['b']);
    expect(ids({ cell: 's2' })).toEqual(['c']);
  });

  const any = fc.record({
    id: fc.string({ minLength: 1 }),
    kind: fc.constant('count-spread'),
    severity: fc.constantFrom<Severity>('NOTE', 'QUESTIONED', 'SERIOUS'),
    birds: fc.nat(20),
    ruling: fc.constantFrom(null, settledOne),
  });

  test('the order does not depend on the order of arrival', () => {
    fc.assert(
      fc.property(
        fc
          .uniqueArray(any, { selector: ({ id }) => id, maxLength: 12 })
          .chain((given) =>
            fc.tuple(fc.constant(given), fc.shuffledSubarray(given, { minLength: given.length })),
          ),
        ([given, shuffled]) => {
          expect(inOrderOfWork(shuffled)).toEqual(inOrderOfWork(given));
        },
      ),
    );
  });
});
