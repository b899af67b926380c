import type { Statistic } from '../model/agreement.js';

/** A statistic that rests on too little, or is 0/0: no value, but the n is told. */
export function noStatistic(n: number): Statistic {
  return { value: null, low: null, high: null, n };
}

/**
 * A statistic as it is reported: to six decimals, which is far more than its interval supports and
 * keeps the rounding of sums out of the result's bytes.
 */
export function statisticOf(
  value: number | null,
  interval: { readonly low: number | null; readonly high: number | null } | null,
  n: number,
): Statistic {
  if (value === null) return noStatistic(n);
  const low = interval?.low ?? null;
  const high = interval?.high ?? null;
  return {
    value: toSixDecimals(value),
    low: low === null ? null : toSixDecimals(low),
    high: high === null ? null : toSixDecimals(high),
    n,
  };
}

function toSixDecimals(value: number): number {
  // + 0 turns −0 into 0.
  return Math.round(value * 1e6) / 1e6 + 0;
}
