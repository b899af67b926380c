import { t } from '@lingui/core/macro';
import { locale } from './language.js';

/** How numbers, times and lists are written on every page, in the language of the pages. */

const formats = new Map<string, Intl.NumberFormat | Intl.DateTimeFormat | Intl.ListFormat>();

/** A way of writing is made once for each language: making one takes longer than a hundred uses. */
function kept<Format extends Intl.NumberFormat | Intl.DateTimeFormat | Intl.ListFormat>(
  name: string,
  make: (locale: string) => Format,
): Format {
  const key = `${locale()} ${name}`;
  const known = formats.get(key) as Format | undefined;
  const format = known ?? make(locale());
  formats.set(key, format);
  return format;
}

function numberFormat(least: number, most: number): Intl.NumberFormat {
  const digits = { minimumFractionDigits: least, maximumFractionDigits: most };
  return kept(`number ${least} ${most}`, (tag) => new Intl.NumberFormat(tag, digits));
}

function dateFormat(name: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${name} ${options.timeZone ?? ''}`;
  return kept(key, (tag) => new Intl.DateTimeFormat(tag, options));
}

/** `1234` → `1,234`; at most one decimal. */
export function birds(count: number): string {
  // Three digits are written alike in all languages of the pages.
  if (Number.isInteger(count) && count >= 0 && count < 1000) return String(count);
  return numberFormat(0, 1).format(count);
}

/** `1.25`: a number as it is, with two decimals at most. */
export function numberWords(value: number): string {
  return numberFormat(0, 2).format(value);
}

/** Birds that were shared out in proportion are not whole: `≈ 112.7`. */
export function birdsAbout(count: number): string {
  return Number.isInteger(count) ? birds(count) : `≈ ${birds(count)}`;
}

/** With as many decimals as are asked for: `decimals(0.8312, 3, 3)` → `0.831`. */
export function decimals(value: number, least: number, most: number): string {
  return numberFormat(least, most).format(value);
}

/** `0.8312` → `0.83`. */
export function twoDecimals(value: number): string {
  return decimals(value, 2, 2);
}

/** `0.8312` → `83 %`; shares that round to the ends without being there stay off them. */
export function percent(share: number): string {
  if (share > 0.995 && share < 1) return t`over 99 %`;
  if (share < 0.005 && share > 0) return t`under 1 %`;
  return t`${Math.round(share * 100)} %`;
}

/** A probability: never said to be certain, however near it comes. */
export function chance(probability: number): string {
  if (probability > 0.995) return t`over 99 %`;
  if (probability < 0.005) return t`under 1 %`;
  return t`${Math.round(probability * 100)} %`;
}

/** An instant as the clock at the waterbody shows it: `08:15`. */
export function clock(instant: string, timeZone: string): string {
  const options = { hour: '2-digit', minute: '2-digit', timeZone } as const;
  return dateFormat('clock', options).format(new Date(instant));
}

/** `08:00 to 11:00`. */
export function span(start: string, end: string, timeZone: string): string {
  return t`${clock(start, timeZone)} to ${clock(end, timeZone)}`;
}

/** A calendar date, `2027-01-16` → `Saturday 16 January 2027`. */
export function longDate(date: string): string {
  return dateFormat('date', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  })
    .format(new Date(`${date}T00:00:00Z`))
    .replace(',', '');
}

/** `16 January 2027, 20:41:07`, for the audit trail. */
export function dayAndClock(instant: string, timeZone: string): string {
  return dateFormat('moment', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZone,
  }).format(new Date(instant));
}

/** First letter large, for the head of a column or a row. */
export function sentenceCase(text: string): string {
  return text === '' ? text : text.charAt(0).toUpperCase() + text.slice(1);
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(parts: readonly string[]): string {
  if (parts.length <= 1) return parts.join('');
  return kept('list', (tag) => new Intl.ListFormat(tag, { type: 'conjunction' })).format(parts);
}
