import { instant, isCalendarDate } from './time.js';
import { nearestOf } from './nearest.js';

/** A value, or what is wrong with it: the part of a fault that does not depend on where it stood. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | {
      readonly ok: false;
      readonly code: string;
      readonly problem: string;
      readonly expected: string;
      readonly nearest: string | null;
    };

/** No flock is larger, and sums of lines stay whole numbers that every program can hold. */
const MOST_BIRDS = 10_000_000;

function wrong(
  code: string,
  problem: string,
  expected: string,
  nearest: string | null = null,
): Reading<never> {
  return { ok: false, code, problem, expected, nearest };
}

/** Whole number from 0, digits only: signs, fractions and thousands separators are explained. */
export function readWhole(text: string, expected = 'a whole number, 0 or more'): Reading<number> {
  if (/^\d+$/u.test(text)) {
    const value = Number(text);
    return value <= MOST_BIRDS
      ? { ok: true, value }
      : wrong('out-of-range', `"${text}" is more than ten million`, expected);
  }
  if (/^[-−]\s*\d/u.test(text)) {
    return wrong('negative', `"${text}" is negative`, expected);
  }
  if (/^\d{1,3}(?:[,'’\s]\d{3})+$/u.test(text)) {
    const digits = text.replace(/\D/gu, '');
    return wrong('thousands-separator', `"${text}" has a thousands separator`, expected, digits);
  }
  if (/^\d{1,3}(?:\.\d{3})+$/u.test(text)) {
    return wrong(
      'fraction',
      `"${text}" is a fraction or has a thousands separator`,
      `${expected}, without points`,
    );
  }
  if (/^\d*[.,]\d+$/u.test(text)) {
    return wrong('fraction', `"${text}" is not a whole number`, expected);
  }
  return wrong('not-a-number', `"${text}" is not a number`, expected);
}

/** Limits of a decimal number; `over` and `under` leave the limit itself out. */
export interface Range {
  readonly from?: number;
  readonly over?: number;
  readonly to?: number;
  readonly under?: number;
}

function outside(value: number, range: Range): boolean {
  return (
    (range.from !== undefined && value < range.from) ||
    (range.over !== undefined && value <= range.over) ||
    (range.to !== undefined && value > range.to) ||
    (range.under !== undefined && value >= range.under)
  );
}

/** Decimal number with a point or a decimal comma, within limits. */
export function readDecimal(text: string, range: Range, expected: string): Reading<number> {
  const plain = text.replace(/^−/u, '-').replace(/^([^,.]*),([^,.]*)$/u, '$1.$2');
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/u.test(plain)) {
    return wrong('not-a-number', `"${text}" is not a number`, expected);
  }
  // Adding 0 turns -0 into 0, so that equal values have equal bytes.
  const value = Number(plain) + 0;
  return outside(value, range) || !Number.isFinite(value)
    ? wrong('out-of-range', `"${text}" is out of range`, expected)
    : { ok: true, value };
}

/** One of a list of words. */
export function readWord<Word extends string>(
  text: string,
  words: readonly Word[],
  what: string,
): Reading<Word> {
  const found = words.find((word) => word === text);
  return found === undefined
    ? wrong('unknown-word', `"${text}" is not a ${what}`, oneOf(words), nearestOf(text, words))
    : { ok: true, value: found };
}

/** Id of something that the count has. */
export function readKnownId(text: string, known: readonly string[], what: string): Reading<string> {
  if (known.includes(text)) return { ok: true, value: text };
  return wrong(
    'unknown-id',
    `"${text}" is not a ${what} of this count`,
    known.length === 0 ? `the id of a ${what}, but the count has none` : oneOf([...known].sort()),
    nearestOf(text, known),
  );
}

/** A new id: letters, digits and - _ . : only, since ids are joined by + and / elsewhere. */
export function readNewId(text: string): Reading<string> {
  return /^[\p{L}\p{N}_.:-]+$/u.test(text)
    ? { ok: true, value: text }
    : wrong('bad-id', `"${text}" cannot be an id`, 'letters, digits and - _ . : without spaces');
}

/** RFC 3339 date-time with offset, kept as written. */
export function readInstant(text: string): Reading<string> {
  if (instant(text) !== null) return { ok: true, value: text };
  const expected =
    'an RFC 3339 date and time with seconds and offset, such as 2027-01-16T08:15:00-05:00';
  const lacksOffset = instant(`${text.replace(' ', 'T')}Z`) !== null;
  return wrong(
    'bad-time',
    lacksOffset ? `"${text}" has no offset from UTC` : `"${text}" is not a date and time`,
    expected,
  );
}

/** ISO 8601 calendar date. */
export function readDate(text: string): Reading<string> {
  return isCalendarDate(text)
    ? { ok: true, value: text }
    : wrong('bad-date', `"${text}" is not a calendar date`, 'a date such as 2027-01-16');
}

/** `a, b or c`; a long list is cut, since nobody reads a hundred names in an error. */
export function oneOf(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? 'nothing';
  if (words.length > 12)
    return `one of ${words.slice(0, 10).join(', ')} and ${String(words.length - 10)} more`;
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1) ?? ''}`;
}
