import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  beginHistory,
  changed,
  redone,
  undone,
  type DraftHistory,
} from '../../web/src/tallies/draft-history.js';
import {
  emptyDraft,
  emptyLine,
  withLine,
  withoutLine,
  type Draft,
} from '../../web/src/tallies/draft.js';

type Act = (draft: Draft) => Draft;

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.nat(9).map((number): Act => {
    const line = { ...emptyLine('Anas platyrhynchos'), number: String(number) };
    return (draft) => withLine(draft, line);
  }),
  fc.tuple(fc.nat(), fc.string()).map(([index, number]): Act => (draft) => {
    const line = draft.lines[index % Math.max(draft.lines.length, 1)];
    return line === undefined ? draft : withLine(draft, { ...line, number });
  }),
  fc.nat().map((index): Act => (draft) => {
    const line = draft.lines[index % Math.max(draft.lines.length, 1)];
    return line === undefined ? draft : withoutLine(draft, line.id);
  }),
  fc.string().map((start): Act => (draft) => ({ ...draft, start })),
  fc.string().map((beaufort): Act => (draft) => ({
    ...draft,
    conditions: { ...draft.conditions, beaufort },
  })),
);

test('any acts are undone one by one to the beginning, and done again to the end', () => {
  fc.assert(
    fc.property(fc.array(act, { maxLength: 60 }), (acts) => {
      const begin = beginHistory(emptyDraft('c1', 'a1'));
      const states = [begin];
      for (const one of acts) {
        const last = states[states.length - 1] ?? begin;
        const next = changed(last, one(last.draft), null);
        if (next !== last) states.push(next);
      }
      let history: DraftHistory = states[states.length - 1] ?? begin;
      for (const { draft } of [...states].reverse()) {
        expect(history.draft).toEqual(draft);
        history = undone(history);
      }
      expect(undone(history)).toBe(history);
      for (const { draft } of states) {
        expect(history.draft).toEqual(draft);
        history = redone(history);
      }
      expect(redone(history)).toBe(history);
    }),
  );
});

test('200 steps are kept, and what was undone is gone after another change', () => {
  let history = beginHistory(emptyDraft('c1', 'a1'));
  for (let step = 1; step <= 250; step += 1) {
    history = changed(history, { ...history.draft, start: String(step) }, null);
  }
  for (let step = 0; step < 300; step += 1) history = undone(history);
  expect(history.draft.start).toBe('50');
  history = changed(history, { ...history.draft, start: 'other' }, null);
  expect(redone(history)).toBe(history);
});

test('characters typed into one field are one step, also with what they set beside it', () => {
  const line = emptyLine('Gavia immer');
  const begin = changed(
    beginHistory(emptyDraft('c1', 'a1')),
    withLine(emptyDraft('c1', 'a1'), line),
    null,
  );
  const type = (history: DraftHistory, number: string, more: Partial<Draft> = {}): DraftHistory =>
    changed(
      history,
      { ...withLine(history.draft, { ...line, number, time: '08:40' }), ...more },
      `${line.id}.number`,
    );
  const typed = type(type(type(begin, '1', { start: '08:40' }), '12'), '123');
  const back = undone(typed);
  expect(back.draft).toEqual(begin.draft);
  expect(redone(back).draft).toEqual(typed.draft);
  // Typing goes on after something else was done: a step of its own.
  const other = changed(typed, { ...typed.draft, end: '10:00' }, null);
  expect(undone(type(other, '1234')).draft).toEqual(other.draft);
});
