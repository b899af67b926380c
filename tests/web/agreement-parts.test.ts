import { i18n } from '@lingui/core';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { comparedWith, intervalText, ratioWords } from '../../web/src/reviews/agreement-words.js';
import {
  confusionBlocks,
  namedBirds,
  totalsByKind,
} from '../../web/src/reviews/confusion-blocks.js';
import { apartSentence } from '../../web/src/reviews/consistency-part.js';
import { spreadOut } from '../../web/src/reviews/ratio-plot.js';
import { logScale, ratioTicks, reachOf, sizeTicks } from '../../web/src/reviews/ratio-scale.js';
import { tabSeparated } from '../../web/src/reviews/tab-separated.js';
import { percent, twoDecimals } from '../../web/src/ui/words.js';
import { ingrid, statistic, tom } from './agreement-count.js';

describe('words', () => {
  test.each([
    [1, 'as many'],
    [1.11, '11 % more'],
    [0.61, '39 % fewer'],
    [2.03, '2.03 times as many'],
    [0.4, '0.40 times as many'],
  ])('a ratio of %d is %s', (ratio, words) => {
    expect(ratioWords(ratio)).toBe(words);
  });

  test('beside somebody', () => {
    expect(comparedWith(1.11, 'Tom')).toBe('11 % more than Tom');
    expect(comparedWith(2.03, 'Tom')).toBe('2.03 times as many as Tom');
    expect(comparedWith(1, 'Tom')).toBe('as many as Tom');
  });

  test('an interval without an upper end, or none at all', () => {
    expect(intervalText(statistic(0.5, 0.4, 0.6), percent)).toBe('[40 to 60 %]');
    expect(intervalText(statistic(0.5, 0.4, 0.6), twoDecimals)).toBe('[0.40 to 0.60]');
    expect(intervalText(statistic(9, 8, null), String)).toBe('[8 or more]');
    expect(intervalText(statistic(9), String)).toBe('');
    // Where the percent sign stands after a space that does not break.
    const inFrench = (share: number): string => `${100 * share}\u00a0%`;
    expect(intervalText(statistic(0.5, 0.4, 0.6), inFrench)).toBe('[40 to 60\u00a0%]');
  });
});

describe('names of the same birds', () => {
  // The scaup of the count worked by hand in tests/core/worked-example: o1 against o2.
  const worked = {
    taxa: [],
    entries: [
      { a: 'Aythya marila', b: 'Aythya marila', number: 300 },
      { a: 'Aythya affinis', b: 'Aythya affinis', number: 10 },
      { a: 'Aythya affinis/marila', b: 'Aythya affinis/marila', number: 60 },
      { a: 'Aythya affinis', b: 'Aythya affinis/marila', number: 20 },
      { a: 'Aythya affinis', b: 'Aythya marila', number: 10 },
      { a: null, b: 'Aythya marila', number: 40 },
    ],
  };

  test('kinds are those of the pairing balance', () => {
    expect(totalsByKind(namedBirds(worked, false))).toEqual({
      agreed: 370,
      compatible: 20,
      differently: 10,
      only: 40,
    });
  });

  test('names that some bird joins stand in one block, the others in none', () => {
    const named = namedBirds(
      {
        taxa: [],
        entries: [
          ...worked.entries,
          { a: 'Anas rubripes', b: 'Anas platyrhynchos', number: 50 },
          { a: 'Fulica americana', b: 'Fulica americana', number: 500 },
          { a: 'Fulica americana', b: null, number: 5 },
        ],
      },
      false,
    );
    expect(confusionBlocks(named).map(({ taxa, apart }) => ({ taxa, apart }))).toEqual([
      { taxa: ['Anas platyrhynchos', 'Anas rubripes'], apart: 50 },
      { taxa: ['Aythya affinis', 'Aythya affinis/marila', 'Aythya marila'], apart: 30 },
    ]);
  });

  const taxon = fc.constantFrom(
    'Aythya marila',
    'Aythya affinis',
    'Aythya sp.',
    'Anas acuta',
    null,
  );

  test('of all pairs together no bird is lost: each two names once, with all of their birds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ a: taxon, b: taxon, number: fc.integer({ min: 1, max: 999 }) })),
        (flows) => {
          const counted = flows.filter(({ a, b }) => a !== null || b !== null);
          const numbers = new Map<string, { a: string | null; b: string | null; number: number }>();
          for (const { a, b, number } of counted) {
            for (const [one, other] of [
              [a, b],
              [b, a],
            ] as const) {
              const key = `${one ?? ''}\n${other ?? ''}`;
              const before = numbers.get(key)?.number ?? 0;
              numbers.set(key, { a: one, b: other, number: before + number / 2 });
            }
          }
          const named = namedBirds({ taxa: [], entries: [...numbers.values()] }, true);
          const sum = (of: readonly { number: number }[]): number =>
            of.reduce((total, { number }) => total + number, 0);
          expect(sum(named)).toBeCloseTo(sum(counted), 9);
          const keys = named.map(({ a, b }) => [a ?? '', b ?? ''].sort().join('\n'));
          expect(new Set(keys).size).toBe(keys.length);
          const inBlocks = confusionBlocks(named).flatMap((block) => block.named);
          expect(new Set(inBlocks).size).toBe(inBlocks.length);
        },
      ),
    );
  });
});

describe('for a spreadsheet', () => {
  afterEach(() => i18n.activate('en', ['en-GB']));

  interface Row {
    readonly name: string;
    readonly ratio: ReturnType<typeof statistic>;
  }
  const columns = [
    { kind: 'text', title: 'Name', text: ({ name }: Row) => name },
    { kind: 'statistic', title: 'Ratio', statistic: ({ ratio }: Row) => ratio, write: twoDecimals },
  ] as const;

  test('numbers in full, too few as empty fields', () => {
    const rows = [
      { name: 'Ingrid Vale', ratio: statistic(1.234567, 1.1, 1.4, 20) },
      { name: 'Tom Reed', ratio: statistic(null, null, null, 3) },
    ];
    expect(tabSeparated(columns, rows)).toBe(
      'Name\tRatio\tRatio, low\tRatio, high\tRatio, n\nIngrid Vale\t1.234567\t1.1\t1.4\t20\nTom Reed\t\t\t\t3\n',
    );
  });

  test('the decimal sign is that of the language of the pages, and nothing is rounded', () => {
    i18n.loadAndActivate({ locale: 'fr', messages: {} });
    const rows = [{ name: 'Ingrid Vale', ratio: statistic(1234.5678, 0.1, null, 2000) }];
    expect(tabSeparated(columns, rows).split('\n')[1]).toBe('Ingrid Vale\t1234,5678\t0,1\t\t2000');
  });

  test('whatever a name is, it stays one field, and is never a formula', () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        const text = tabSeparated(columns, [{ name, ratio: statistic(1) }]);
        const lines = text.split('\n');
        expect(lines.length).toBe(3);
        const fields = lines[1]?.split('\t') ?? [];
        expect(fields.length).toBe(5);
        expect(fields[0]).not.toMatch(/^[=+\-@]/u);
      }),
    );
    expect(tabSeparated(columns, [{ name: '=1+1', ratio: statistic(1) }])).toContain("\n'=1+1\t");
  });
});

describe('scales', () => {
  test('level is in the middle, and every tick is on the scale', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 100, noNaN: true })), (ratios) => {
        const reach = reachOf(ratios);
        const ticks = ratioTicks(reach);
        expect(ticks.length).toBeGreaterThanOrEqual(3);
        expect(ticks[(ticks.length - 1) / 2]).toBe(1);
        expect(ticks).toEqual([...ticks].sort((one, other) => one - other));
        const at = logScale(1 / reach, reach, 0, 1);
        for (const tick of ticks) {
          expect(at(tick)).toBeGreaterThanOrEqual(-1e-9);
          expect(at(tick)).toBeLessThanOrEqual(1 + 1e-9);
        }
        expect(at(1)).toBeCloseTo(0.5, 9);
        for (const ratio of ratios.filter((one) => one > 0.105 && one < 9.5)) {
          expect(at(ratio)).toBeGreaterThanOrEqual(0);
          expect(at(ratio)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('sizes have two ticks or more', () => {
    expect(sizeTicks(1, 2500)).toEqual([1, 10, 100, 1000]);
    expect(sizeTicks(1, 40)).toEqual([1, 3, 10, 30]);
  });

  test('labels that lie close are moved apart, around their middle', () => {
    expect(spreadOut([100, 102, 104])).toEqual([87, 102, 117]);
    expect(spreadOut([10, 100])).toEqual([10, 100]);
  });
});

describe('who stands apart', () => {
  const set = (h: number, k: number) => ({
    groups: 8,
    hCritical: { questioned: 1.15, serious: 1.155 },
    kCritical: { questioned: 1.4, serious: 1.6 },
    observers: [
      { observer: ingrid, h, k },
      { observer: tom, h: 0.1, k: 0.9 },
    ],
  });

  test('beyond a critical value, to either side for the mean', () => {
    expect(apartSentence(set(-1.152, 1))).toContain(
      'Ingrid Vale stands apart by the mean (beyond 5 %)',
    );
    expect(apartSentence(set(0.5, 1.7))).toContain(
      'Ingrid Vale stands apart by the spread (beyond 1 %)',
    );
    expect(apartSentence(set(1.15, 1.4))).toContain('nobody stands apart');
  });
});
