import type { StatisticPartsFragment } from '../graphql/generated/graphql.js';
import { birds, countOf, percent, twoDecimals } from '../ui/words.js';

/** Differences of ratios under this are none to the eye. */
const NONE = 0.005;

/** A ratio as people say it: `11 % more`, `39 % fewer`, `2.03 times as many`, `as many`. */
export function ratioWords(ratio: number): string {
  if (Math.abs(ratio - 1) < NONE) return 'as many';
  if (ratio >= 1.995 || ratio < 0.495) return `${twoDecimals(ratio)} times as many`;
  const share = Math.round(100 * Math.abs(ratio - 1));
  return `${share} % ${ratio > 1 ? 'more' : 'fewer'}`;
}

/** The same beside whom: `11 % more than Tom Reed`, `as many as Tom Reed`. */
export function comparedWith(ratio: number, name: string): string {
  const words = ratioWords(ratio);
  return `${words} ${words.endsWith('as many') ? 'as' : 'than'} ${name}`;
}

/** True where both ends lie on one side of level: the average differs by more than chance explains. */
export function isOffLevel({ low, high }: StatisticPartsFragment): boolean {
  return low !== null && high !== null && (low > 1 || high < 1);
}

/** `n = 24 groups`, or why there is no number. */
export function restsOn(
  { value, n }: StatisticPartsFragment,
  least: number,
  one = 'group',
  many = `${one}s`,
): string {
  if (value !== null) return `From ${countOf(n, one, many)}.`;
  if (n < least) {
    return `Too few: ${countOf(n, one, many)}, and at least ${birds(least)} are needed.`;
  }
  return `No number from ${countOf(n, one, many)}: nothing differs, or chance alone would give as much.`;
}

/** What stands in place of a number that there is not. */
export function missingWord({ n }: StatisticPartsFragment, least: number): string {
  return n < least ? 'too few' : 'none';
}

/** `[0.47 to 0.88]`, `[47 to 88 %]`; empty without an interval. */
export function intervalText(
  { low, high }: StatisticPartsFragment,
  write: (value: number) => string,
): string {
  if (low === null) return '';
  if (high === null) return `[${write(low)} or more]`;
  const [from, to] = [write(low), write(high)];
  return `[${to.endsWith(' %') ? from.replace(/ %$/u, '') : from} to ${to}]`;
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
