import { describe, expect, it } from 'vitest';
import type { Result } from '../../server/core/model/result.js';
import { aCount, aProtocol, aTally } from './a-count.js';
import { reconcileInEnglish as reconcile } from '../support/reconcile-in-english.js';

const numberOf = (result: Result<string>, taxon: string): number | undefined =>
  result.compiled.find((line) => line.taxon === taxon)?.number;

describe('alignment', () => {
  it('compares a merged tally with those who together cover the same sections', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [['Mallard', 30]], { sections: ['s1', 's2'] }),
        aTally('o2', [['Mallard', 20]], { sections: ['s1'] }),
        aTally('o3', [['Mallard', 8]], { sections: ['s2'] }),
      ]),
      [],
      aProtocol(),
    );
    expect(result.cells.map((cell) => cell.id)).toEqual(['s1+s2:w1']);
    const pairing = result.cells[0]?.pairings.find((each) => each.b === 'o2+o3');
    expect(pairing).toMatchObject({ a: 'o1', agreed: 28, onlyA: 2, independent: true });
    expect(numberOf(result, 'Anas platyrhynchos')).toBe(29);
  });

  it('does not take two who went together for two', () => {
    const together = reconcile(
      aCount([
        aTally('o1', [['Mallard', 30]], { party: ['o1', 'o2'] }),
        aTally('o2', [['Mallard', 34]]),
        aTally('o3', [['Mallard', 40]]),
      ]),
      [],
      aProtocol(),
    );
    // (30 + 34) / 2 = 32 counts once: (32 + 40) / 2 = 36, not (30 + 34 + 40) / 3 = 34.67.
    expect(numberOf(together, 'Anas platyrhynchos')).toBe(36);
    expect(together.cells[0]?.pairings.map((pair) => pair.independent)).toEqual([
      false,
      true,
      true,
    ]);
  });

  it('keeps counts that were not made at the same time apart and compiles the higher', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [['Mallard', 30]], { end: '2027-01-16T08:30:00-05:00' }),
        aTally('o2', [['Mallard', 50]], {
          start: '2027-01-16T09:00:00-05:00',
          end: '2027-01-16T09:30:00-05:00',
        }),
      ]),
      [],
      aProtocol(),
    );
    expect(result.cells.map((cell) => cell.id)).toEqual(['s1:w1', 's1:w1:2']);
    expect(numberOf(result, 'Anas platyrhynchos')).toBe(50);
    expect(result.disagreements.some((each) => each.kind === 'time-mismatch')).toBe(true);
  });

  it('compares counts that lie apart by no more than the slack', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [['Mallard', 30]], { end: '2027-01-16T08:30:00-05:00' }),
        aTally('o2', [['Mallard', 34]], {
          start: '2027-01-16T08:40:00-05:00',
          end: '2027-01-16T09:30:00-05:00',
        }),
      ]),
      [],
      aProtocol(),
    );
    expect(numberOf(result, 'Anas platyrhynchos')).toBe(32);
  });

  it('reads silence inside the scope as none seen, outside it as no claim', () => {
    const lines = [
      ['Mallard', 30],
      ['Common Loon', 4],
    ] as const;
    const inside = reconcile(
      aCount([aTally('o1', lines), aTally('o2', [['Mallard', 30]])]),
      [],
      aProtocol(),
    );
    expect(inside.disagreements.filter((each) => each.kind === 'seen-by-one')).toHaveLength(1);

    const outside = reconcile(
      aCount([
        aTally('o1', lines),
        aTally('o2', [['Mallard', 30]], { scope: { kind: 'waterfowl' } }),
      ]),
      [],
      aProtocol({ zeros: 'absent' }),
    );
    expect(outside.disagreements.filter((each) => each.kind === 'seen-by-one')).toEqual([]);
    expect(numberOf(outside, 'Gavia immer')).toBe(4);
    expect(outside.cells[0]?.pairings[0]).toMatchObject({ agreed: 30, onlyA: 0, outsideScopeA: 4 });
  });

  it('uses a partial tally only where no full one saw the birds, and says so', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [['Mallard', 30]]),
        aTally(
          'o2',
          [
            ['Mallard', 12],
            ['Redhead', 25],
          ],
          { coverage: 0.5 },
        ),
      ]),
      [],
      aProtocol(),
    );
    expect(numberOf(result, 'Anas platyrhynchos')).toBe(30);
    expect(numberOf(result, 'Aythya americana')).toBe(25);
    expect(
      result.disagreements.find((each) => each.group?.includes('Aythya americana'))?.text,
    ).toContain('lower bound');
  });

  it('keeps birds that only fly through apart from birds using the water', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [
          ['Canada Goose', 40],
          ['Canada Goose', 200, { activity: 'flying-through' }],
        ]),
      ]),
      [],
      aProtocol(),
    );
    expect(result.compiled).toMatchObject([{ number: 40, flyingThrough: 200 }]);
  });

  it('compiles each window by itself and reports the highest, a named one, or the mean', () => {
    const count = aCount([
      aTally('o1', [['Mallard', 30]]),
      aTally('o2', [['Mallard', 51]], {
        window: 'w2',
        start: '2027-01-16T12:00:00-05:00',
        end: '2027-01-16T13:00:00-05:00',
      }),
    ]);
    const by = (windows: string): [string, number | undefined] => {
      const result = reconcile(count, [], aProtocol({ windows }));
      return [result.reported, numberOf(result, 'Anas platyrhynchos')];
    };
    expect(by('highest')).toEqual(['w2', 51]);
    expect(by('w1')).toEqual(['w1', 30]);
    expect(by('mean')).toEqual(['test-count', 41]);
  });

  it('keeps a stated zero, and birds that were seen but not counted, in the compiled count', () => {
    const result = reconcile(
      aCount([
        aTally('o1', [
          ['Canvasback', 0],
          ['Redhead', null],
        ]),
      ]),
      [],
      aProtocol(),
    );
    expect(result.compiled).toMatchObject([
      { taxon: 'Aythya valisineria', number: 0, presentNotCounted: false },
      { taxon: 'Aythya americana', number: 0, presentNotCounted: true },
    ]);
  });

  it('lists sections that nobody counted as unknown, not as empty', () => {
    const result = reconcile(aCount([aTally('o1', [['Mallard', 30]])]), [], aProtocol());
    const texts = result.disagreements.map((each) => each.text);
    expect(texts.some((text) => text.startsWith('Nobody counted Outlet in window w1'))).toBe(true);
  });
});
