import type { Draft, DraftLine } from './draft.js';
import { clockTimeOf } from './local-time.js';

/**
 * Changes fields of one line.
 *
 * @param field set while somebody types into it: its characters are undone together
 */
export type ChangeLine = (lineId: string, change: Partial<DraftLine>, field?: string) => void;

/** Counting begins before a window and goes on after it, but not by more (common practice, no source). */
const AROUND_WINDOW = 2 * 60 * 60 * 1000;

/**
 * The clock time at the waterbody to stamp on what is counted now; `null` where nobody can be
 * counting, as when a sheet is typed in the evening.
 *
 * @param now milliseconds
 */
export function stampAt(
  now: number,
  window: { readonly start: string; readonly end: string },
  timeZone: string,
): string | null {
  const [start, end] = [Date.parse(window.start), Date.parse(window.end)];
  if (now < start - AROUND_WINDOW || now > end + AROUND_WINDOW) return null;
  return clockTimeOf(new Date(now).toISOString(), timeZone);
}

const counting = ['number', 'low', 'high'] as const;

/**
 * The draft with fields of a line changed. The first bird of a line stamps its time, and the first of
 * the tally its beginning too; what stands there already stays.
 */
export function editedLine(
  draft: Draft,
  lineId: string,
  change: Partial<DraftLine>,
  stamp: string | null,
): Draft {
  const line = draft.lines.find(({ id }) => id === lineId);
  if (line === undefined) return draft;
  const isFirst =
    (counting.some((field) => (change[field] ?? '') !== '') || change.quantity === 'present') &&
    counting.every((field) => line[field] === '') &&
    line.quantity !== 'present';
  const time = isFirst && line.time === '' ? (stamp ?? '') : line.time;
  const next = { ...line, time, ...change };
  return {
    ...draft,
    start: isFirst && draft.start === '' ? (stamp ?? '') : draft.start,
    lines: draft.lines.map((one) => (one === line ? next : one)),
  };
}
