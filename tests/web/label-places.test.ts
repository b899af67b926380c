import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { overlap, placeLabels, type Label } from '../../web/src/plans/label-places.js';

const frame = { left: 0, top: 0, right: 390, bottom: 500 };

const anyLabel = fc.record({
  lines: fc.array(fc.string({ minLength: 1, maxLength: 22 }), { minLength: 1, maxLength: 2 }),
  at: fc.tuple(fc.integer({ min: 0, max: 390 }), fc.integer({ min: 0, max: 500 })),
  clear: fc.integer({ min: 0, max: 14 }),
  isOptional: fc.boolean(),
});
const anyLabels = fc
  .array(anyLabel, { maxLength: 14 })
  .map((labels): Label[] => labels.map((label, index) => ({ ...label, key: `label ${index}` })));

describe('labels of a map', () => {
  test('none is cut off, and no needed one is left out', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        const placed = placeLabels(labels, frame, []);
        for (const { box } of placed) {
          expect(box.left).toBeGreaterThanOrEqual(frame.left - 1e-9);
          expect(box.right).toBeLessThanOrEqual(frame.right + 1e-9);
          expect(box.top).toBeGreaterThanOrEqual(frame.top - 1e-9);
          expect(box.bottom).toBeLessThanOrEqual(frame.bottom + 1e-9);
        }
        const keys = placed.map(({ key }) => key);
        expect(keys).toEqual(
          expect.arrayContaining(labels.filter((one) => !one.isOptional).map(({ key }) => key)),
        );
      }),
    );
  });

  test('an optional one covers neither a mark nor an earlier label', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        const mark = { left: 180, right: 200, top: 240, bottom: 260 };
        const placed = placeLabels(labels, frame, [mark]);
        const optional = new Set(labels.filter((one) => one.isOptional).map(({ key }) => key));
        placed.forEach(({ key, box }, index) => {
          if (!optional.has(key)) return;
          expect(overlap(box, mark)).toBe(0);
          for (const earlier of placed.slice(0, index)) expect(overlap(box, earlier.box)).toBe(0);
        });
      }),
    );
  });

  test('two at one point stand beside each other', () => {
    const label = { lines: ['08:24'], at: [200, 200], clear: 8 } as const;
    const [one, other] = placeLabels(
      [
        { ...label, key: 'a' },
        { ...label, key: 'b' },
      ],
      frame,
      [],
    );
    expect(one?.box.left).toBeGreaterThanOrEqual(208);
    expect(other?.box.right).toBeLessThanOrEqual(192);
  });

  test('one that belongs to the left stands there, as far as there is room', () => {
    const label = { key: 'a', lines: ['Chapel bluff'], clear: 9, isLeftFirst: true } as const;
    const [free] = placeLabels([{ ...label, at: [200, 200] }], frame, []);
    expect(free?.box.right).toBeLessThanOrEqual(191);
    const [atEdge] = placeLabels([{ ...label, at: [5, 200] }], frame, []);
    expect(atEdge?.box.left).toBeGreaterThanOrEqual(14);
  });

  test('at the right edge it stands to the left of its point', () => {
    const [placed] = placeLabels(
      [{ key: 'a', lines: ['Old quarry jetty'], at: [385, 200], clear: 9 }],
      frame,
      [],
    );
    expect(placed?.box.right).toBeLessThanOrEqual(376);
  });
});
