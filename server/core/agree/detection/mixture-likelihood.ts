import { logGamma } from '../../math/gamma.js';
import { minimise } from '../../math/minimise.js';
import { sum } from '../../math/sum.js';

export type Abundance = 'poisson' | 'negative-binomial';

/** Terms this far below the largest so far add nothing to a double. */
const NEGLIGIBLE = 1e-18;
/** Sums are brought back down before they overflow. */
const TOO_LARGE = 1e200;

/**
 * Log-likelihood of the counts of one site in a binomial mixture: the sum over the number N that was
 * there, from the largest count up, of its chance times the binomial chances of all counts.
 *
 * Each term follows from the one before; they rise to one top and then fall, and the sum ends where
 * they no longer add anything.
 *
 * @param row whole counts of at least 0, smallest first
 * @param mean over 0
 * @param chance over 0 and under 1
 * @param size of the negative binomial; infinity is Poisson
 */
export function siteLogLikelihood(
  row: readonly number[],
  mean: number,
  chance: number,
  size: number,
): number {
  const least = row.at(-1) ?? 0;
  const missed = (1 - chance) ** row.length;
  const odds = size === Infinity ? mean : mean / (mean + size);
  let term = 1;
  let total = 1;
  let scaled = 0;
  for (let number = least; ; number += 1) {
    let ratio = missed;
    for (const count of row) ratio *= (number + 1) / (number + 1 - count);
    ratio *= (size === Infinity ? odds : odds * (number + size)) / (number + 1);
    term *= ratio;
    total += term;
    if (total > TOO_LARGE) {
      scaled += Math.log(total);
      term /= total;
      total = 1;
    }
    if (ratio < 1 && term < NEGLIGIBLE * total * (1 - ratio)) break;
  }
  return logAtLeast(row, least, mean, chance, size) + scaled + Math.log(total);
}

/** ln of the term of the smallest number that can have been there. */
function logAtLeast(
  row: readonly number[],
  least: number,
  mean: number,
  chance: number,
  size: number,
): number {
  let value =
    size === Infinity
      ? least * Math.log(mean) - mean - logGamma(least + 1)
      : logGamma(least + size) -
        logGamma(size) -
        logGamma(least + 1) -
        size * Math.log1p(mean / size) +
        (least === 0 ? 0 : least * Math.log(mean / (mean + size)));
  for (const count of row) {
    value +=
      logGamma(least + 1) -
      logGamma(count + 1) -
      logGamma(least - count + 1) +
      (count === 0 ? 0 : count * Math.log(chance)) +
      (least === count ? 0 : (least - count) * Math.log1p(-chance));
  }
  return value;
}

/**
 * The greatest log-likelihood that a binomial mixture comes near to as its chance goes to 0 and its
 * mean goes up with their product kept: counts that are Poisson about one expected number (Poisson
 * mixture), or about a gamma-distributed one of the site (negative binomial mixture).
 */
export function withoutEnd(
  patterns: readonly { readonly row: readonly number[]; readonly times: number }[],
  expected: number,
  abundance: Abundance,
): number {
  const constant = sum(
    patterns.map(({ row, times }) => -times * sum(row.map((count) => logGamma(count + 1)))),
  );
  if (abundance === 'poisson') {
    // The best expected number is the mean of all counts.
    return (
      constant +
      sum(
        patterns.map(
          ({ row, times }) => times * (sum(row) * Math.log(expected) - row.length * expected),
        ),
      )
    );
  }
  const negative = ([logMean = NaN, logSize = NaN]: readonly number[]): number => {
    const [rate, size] = [Math.exp(logMean), Math.exp(logSize)];
    return -sum(
      patterns.map(({ row, times }) => {
        const counted = sum(row);
        return (
          times *
          (logGamma(counted + size) -
            logGamma(size) -
            size * Math.log1p((row.length * rate) / size) +
            counted * Math.log(rate / (size + row.length * rate)))
        );
      }),
    );
  };
  return constant - minimise(negative, [Math.log(expected), 0]).value;
}
