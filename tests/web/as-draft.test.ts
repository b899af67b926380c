import { describe, expect, test } from 'vitest';
import { asDraft } from '../../web/src/tallies/as-draft.js';
import { emptyDraft, emptyLine, noConditions } from '../../web/src/tallies/draft.js';

const kept = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a kept draft', () => {
  test('comes back as it was kept', () => {
    const draft = {
      ...emptyDraft('c1', 'a1'),
      seenAll: false,
      seenArea: [
        [-79, 44],
        [-79.1, 44.1],
      ] as const,
      conditions: { ...noConditions, beaufort: '4' },
      lines: [{ ...emptyLine('Anas platyrhynchos'), number: '1,200', method: 'block' as const }],
      replaces: 't-old',
      reason: 'Two were decoys.',
    };
    expect(asDraft(kept(draft))).toEqual(draft);
  });

  test('of an earlier version gets what is new, and keeps everything it has', () => {
    const draft = emptyDraft('c1', 'a1');
    const line = { ...emptyLine('Anas platyrhynchos'), number: '12', note: 'by the pier' };
    const earlier = {
      id: draft.id,
      assignmentId: 'a1',
      countId: 'c1',
      start: '08:15',
      end: '',
      scope: 'waterfowl',
      seenAll: true,
      party: ['o2'],
      lines: [{ id: line.id, taxon: line.taxon, number: '12', note: 'by the pier' }],
      replaces: null,
    };
    expect(asDraft(kept(earlier))).toEqual({
      ...draft,
      start: '08:15',
      scope: 'waterfowl',
      party: ['o2'],
      lines: [line],
    });
  });

  test('with something broken in it loses that and nothing else', () => {
    const draft = emptyDraft('c1', 'a1');
    const broken = {
      ...draft,
      start: 8,
      scope: 'everything',
      conditions: { beaufort: 4, optics: 'telescope' },
      lines: [
        { ...emptyLine('Gavia immer'), number: '3', method: 'by heart', block: null },
        'a line',
        { number: '4' },
      ],
    };
    const read = asDraft(kept(broken));
    expect(read).toMatchObject({
      id: draft.id,
      start: '',
      scope: 'all-waterbirds',
      conditions: { ...noConditions, optics: 'telescope' },
    });
    expect(read?.lines).toMatchObject([
      { taxon: 'Gavia immer', number: '3', method: 'one-by-one', block: '' },
    ]);
  });

  test.each([null, 'text', [], {}, { id: 'd1', lines: [] }, { ...emptyDraft('c', 'a'), lines: 3 }])(
    'is none: %j',
    (value) => {
      expect(asDraft(value)).toBeNull();
    },
  );
});
