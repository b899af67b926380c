import { studentTQuantile } from '../math/student-t.js';
import { sum } from '../math/sum.js';

export interface FleissKappa {
  /** `null` where every rater gave everything one name. */
  readonly value: number | null;
  /** Student's limits, not cut off at 1; `null` as `value`, or for one thing. */
  readonly low: number | null;
  readonly high: number | null;
  /** From how things differ, by linearisation; for an interval. */
  readonly standardError: number | null;
  /** Standard error if there were no agreement beyond chance: for a test, not for an interval. */
  readonly standardErrorIfNone: number | null;
  /** Mean share of pairs of raters who gave a thing the same name. */
  readonly observed: number;
  readonly expected: number;
  /** Kappa of each name against all others; `null` for a name that all or none got. */
  readonly byName: readonly (number | null)[];
  readonly n: number;
}

/**
 * Fleiss' kappa (1971, Psychol. Bull. 76:378): agreement beyond chance of the same number of raters
 * on each thing, whoever they are. Null standard error by Fleiss, Nee & Landis (1979, Psychol. Bull.
 * 86:974). Standard error for an interval, with things drawn from many and agreement of any size, by
 * linearisation (Gwet 2008, Br. J. Math. Stat. Psychol. 61:29; 2021, Psychometrika 86:790). Things are
 * taken as independent.
 *
 * @param counts rows: things; columns: names; how many raters gave the thing that name
 * @throws RangeError unless every row has the same length and the same sum of at least 2
 * @example fleissKappa([[2, 0], [0, 2]]).value // 1
 */
export function fleissKappa(counts: readonly (readonly number[])[], level = 0.95): FleissKappa {
  const [first = []] = counts;
  const raters = first.reduce((total, count) => total + count, 0);
  const sameRaters = (row: readonly number[]): boolean =>
    row.length === first.length && row.reduce((total, count) => total + count, 0) === raters;
  if (!(raters >= 2) || !counts.every(sameRaters)) {
    throw new RangeError('fleissKappa requires the same two or more raters for every thing');
  }
  const n = counts.length;
  const pairs = raters * (raters - 1);
  const totals = new Float64Array(first.length);
  const apart = new Float64Array(first.length);
  const agreed = Float64Array.from(counts, (row) => {
    let same = 0;
    row.forEach((count, name) => {
      same += count * (count - 1);
      totals[name] = (totals[name] ?? 0) + count;
      apart[name] = (apart[name] ?? 0) + count * (raters - count);
    });
    return same / pairs;
  });
  const observed = sum(agreed) / n;
  const shares = totals.map((total) => total / (n * raters));
  const expected = sum(shares.map((share) => share ** 2));
  const byName = Array.from(shares, (share, name) =>
    share === 0 || share === 1 ? null : 1 - (apart[name] ?? 0) / (n * pairs * share * (1 - share)),
  );
  if (1 - expected < 1e-12) {
    const none = { value: null, low: null, high: null, standardError: null };
    return { ...none, standardErrorIfNone: null, observed, expected, byName, n };
  }
  const spread = sum(shares.map((share) => share * (1 - share)));
  const skew = sum(shares.map((share) => share * (1 - share) * (1 - 2 * share)));
  const standardErrorIfNone =
    (Math.SQRT2 * Math.sqrt(spread ** 2 - skew)) / (spread * Math.sqrt(n * pairs));
  const value = (observed - expected) / (1 - expected);
  const standardError =
    n < 2 ? null : linearised(counts, agreed, shares, { value, expected, raters });
  const reach =
    standardError === null ? null : studentTQuantile((1 + level) / 2, n - 1) * standardError;
  return {
    value,
    low: reach === null ? null : value - reach,
    high: reach === null ? null : value + reach,
    standardError,
    standardErrorIfNone,
    observed,
    expected,
    byName,
    n,
  };
}

/** Gwet's: each thing's own kappa, less twice what its names add to chance agreement. */
function linearised(
  counts: readonly (readonly number[])[],
  agreed: Float64Array,
  shares: Float64Array,
  { value, expected, raters }: { value: number; expected: number; raters: number },
): number {
  const n = counts.length;
  const squares = counts.map((row, thing) => {
    const own = ((agreed[thing] ?? NaN) - expected) / (1 - expected);
    const byChance = row.reduce((total, count, name) => total + count * (shares[name] ?? 0), 0);
    const pull = (2 * (1 - value) * (byChance / raters - expected)) / (1 - expected);
    return (own - pull - value) ** 2;
  });
  return Math.sqrt(sum(squares) / (n * (n - 1)));
}
