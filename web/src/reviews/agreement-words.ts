import { i18n } from '@lingui/core';
import { msg, plural, t } from '@lingui/core/macro';
import type { StatisticPartsFragment } from '../graphql/generated/graphql.js';
import { birds, percent, twoDecimals } from '../ui/words.js';

/** Differences of ratios under this are none to the eye. */
const NONE = 0.005;

/** In place of a number that there is not. */
export const noNumber = msg({ message: 'none', context: 'in place of a number' });

type RatioKind = 'same' | 'times' | 'more' | 'fewer';

/** How a ratio is best said, and the number that is said. */
function readRatio(ratio: number): { readonly kind: RatioKind; readonly number: string } {
  const share = String(Math.round(100 * Math.abs(ratio - 1)));
  if (Math.abs(ratio - 1) < NONE) return { kind: 'same', number: share };
  if (ratio >= 1.995 || ratio < 0.495) return { kind: 'times', number: twoDecimals(ratio) };
  return { kind: ratio > 1 ? 'more' : 'fewer', number: share };
}

/** A ratio as people say it: `11 % more`, `39 % fewer`, `2.03 times as many`, `as many`. */
export function ratioWords(ratio: number): string {
  const { kind, number } = readRatio(ratio);
  switch (kind) {
    case 'same':
      return t`as many`;
    case 'times':
      return t`${number} times as many`;
    case 'more':
      return t`${number} % more`;
    case 'fewer':
      return t`${number} % fewer`;
  }
}

/** The same beside whom: `11 % more than Tom Reed`, `as many as Tom Reed`. */
export function comparedWith(ratio: number, name: string): string {
  const { kind, number } = readRatio(ratio);
  switch (kind) {
    case 'same':
      return t`as many as ${name}`;
    case 'times':
      return t`${number} times as many as ${name}`;
    case 'more':
      return t`${number} % more than ${name}`;
    case 'fewer':
      return t`${number} % fewer than ${name}`;
  }
}

/** True where both ends lie on one side of level: the average differs by more than chance explains. */
export function isOffLevel({ low, high }: StatisticPartsFragment): boolean {
  return low !== null && high !== null && (low > 1 || high < 1);
}

/** `From 24 groups.`, or why there is no number. */
export function restsOn({ value, n }: StatisticPartsFragment, least: number): string {
  if (value !== null) return plural(n, { one: 'From # group.', other: 'From # groups.' });
  if (n < least) {
    const needed = birds(least);
    return plural(n, {
      one: `Too few: # group, and at least ${needed} are needed.`,
      other: `Too few: # groups, and at least ${needed} are needed.`,
    });
  }
  return plural(n, {
    one: 'No number from # group: nothing differs, or chance alone would give as much.',
    other: 'No number from # groups: nothing differs, or chance alone would give as much.',
  });
}

/** Whom or what a sentence is about, before it: `Tom Reed: From 24 groups.` */
export function about(name: string, sentence: string): string {
  return t`${name}: ${sentence}`;
}

/** What stands in place of a number that there is not. */
export function missingWord({ n }: StatisticPartsFragment, least: number): string {
  return n < least ? t`too few` : i18n._(noNumber);
}

/** `[0.47 to 0.88]`, `[47 to 88 %]`; empty without an interval. */
export function intervalText(
  { low, high }: StatisticPartsFragment,
  write: (value: number) => string,
): string {
  if (low === null) return '';
  const lower = write(low);
  if (high === null) return t`[${lower} or more]`;
  const upper = write(high);
  // A percent sign once, after a space or one that does not break.
  const from = /\s%$/u.test(upper) ? lower.replace(/\s%$/u, '') : lower;
  return t`[${from} to ${upper}]`;
}

/** Shares as percentages, the others with two decimals. */
export function writeMeasure(key: string): (value: number) => string {
  return ['percentAgreement', 'withinTolerance', 'sensitivity'].includes(key)
    ? percent
    : twoDecimals;
}

/** A variance of logarithms as the coefficient of variation of the numbers: 0.04 → `20 %`. */
export function variation(variance: number): string {
  return percent(Math.sqrt(Math.expm1(variance)));
}
