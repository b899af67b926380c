import { instant, isCalendarDate } from './time.js';
import { nearestOf } from './nearest.js';
import { type Saying, asWritten, joined, say } from './saying.js';

/** A value, or what is wrong with it: the part of a fault that does not depend on where it stood. */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | {
      readonly ok: false;
      readonly code: string;
      readonly problem: Saying;
      readonly expected: Saying;
      readonly nearest: string | null;
    };

/** No flock is larger, and sums of lines stay whole numbers that every program can hold. */
const MOST_BIRDS = 10_000_000;

function wrong(
  code: string,
  problem: Saying,
  expected: Saying,
  nearest: string | null = null,
): Reading<never> {
  return { ok: false, code, problem, expected, nearest };
}

/** Whole number from 0, digits only: signs, fractions and thousands separators are explained. */
export function readWhole(
  text: string,
  expected = say('a whole number, 0 or more'),
): Reading<number> {
  if (/^\d+$/u.test(text)) {
    const value = Number(text);
    return value <= MOST_BIRDS
      ? { ok: true, value }
      : wrong('out-of-range', say('"{text}" is more than ten million', { text }), expected);
  }
  if (/^[-−]\s*\d/u.test(text)) {
    return wrong('negative', say('"{text}" is negative', { text }), expected);
  }
  if (/^\d{1,3}(?:[,'’\s]\d{3})+$/u.test(text)) {
    const digits = text.replace(/\D/gu, '');
    return wrong(
      'thousands-separator',
      say('"{text}" has a thousands separator', { text }),
      expected,
      digits,
    );
  }
  if (/^\d{1,3}(?:\.\d{3})+$/u.test(text)) {
    return wrong(
      'fraction',
      say('"{text}" is a fraction or has a thousands separator', { text }),
      say('{expected}, without points', { expected }),
    );
  }
  if (/^\d*[.,]\d+$/u.test(text)) {
    return wrong('fraction', say('"{text}" is not a whole number', { text }), expected);
  }
  return wrong('not-a-number', say('"{text}" is not a number', { text }), expected);
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
export function readDecimal(text: string, range: Range, expected: Saying): Reading<number> {
  const plain = text.replace(/^−/u, '-').replace(/^([^,.]*),([^,.]*)$/u, '$1.$2');
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?$/u.test(plain)) {
    return wrong('not-a-number', say('"{text}" is not a number', { text }), expected);
  }
  // Adding 0 turns -0 into 0, so that equal values have equal bytes.
  const value = Number(plain) + 0;
  return outside(value, range) || !Number.isFinite(value)
    ? wrong('out-of-range', say('"{text}" is out of range', { text }), expected)
    : { ok: true, value };
}

/** One of a list of words. */
export function readWord<Word extends string>(
  text: string,
  words: readonly Word[],
  what: Saying,
): Reading<Word> {
  const found = words.find((word) => word === text);
  return found === undefined
    ? wrong(
        'unknown-word',
        say('"{text}" is not a {what}', { text, what }),
        oneOf(words),
        nearestOf(text, words),
      )
    : { ok: true, value: found };
}

/** Id of something that the count has. */
export function readKnownId(text: string, known: readonly string[], what: Saying): Reading<string> {
  if (known.includes(text)) return { ok: true, value: text };
  return wrong(
    'unknown-id',
    say('"{text}" is not a {what} of this count', { text, what }),
    known.length === 0
      ? say('the id of a {what}, but the count has none', { what })
      : oneOf([...known].sort()),
    nearestOf(text, known),
  );
}

/** A new id: letters, digits and - _ . : only, since ids are joined by + and / elsewhere. */
export function readNewId(text: string): Reading<string> {
  return /^[\p{L}\p{N}_.:-]+$/u.test(text)
    ? { ok: true, value: text }
    : wrong(
        'bad-id',
        say('"{text}" cannot be an id', { text }),
        say('letters, digits and - _ . : without spaces'),
      );
}

/** RFC 3339 date-time with offset, kept as written. */
export function readInstant(text: string): Reading<string> {
  if (instant(text) !== null) return { ok: true, value: text };
  const expected = say(
    'an RFC 3339 date and time with seconds and offset, such as 2027-01-16T08:15:00-05:00',
  );
  const lacksOffset = instant(`${text.replace(' ', 'T')}Z`) !== null;
  return wrong(
    'bad-time',
    lacksOffset
      ? say('"{text}" has no offset from UTC', { text })
      : say('"{text}" is not a date and time', { text }),
    expected,
  );
}

/** ISO 8601 calendar date. */
export function readDate(text: string): Reading<string> {
  return isCalendarDate(text)
    ? { ok: true, value: text }
    : wrong(
        'bad-date',
        say('"{text}" is not a calendar date', { text }),
        say('a date such as 2027-01-16'),
      );
}

/** `a, b or c`; a long list is cut, since nobody reads a hundred names in an error. */
export function oneOf(words: readonly string[]): Saying {
  const [first, ...others] = words;
  if (first === undefined) return say('nothing');
  const last = others.at(-1);
  if (last === undefined) return asWritten(first);
  if (words.length > 12) {
    const some = joined(words.slice(0, 10), ', ');
    return say('one of {some} and {more} more', { some, more: words.length - 10 });
  }
  return say('{others} or {last}', { others: joined(words.slice(0, -1), ', '), last });
}
