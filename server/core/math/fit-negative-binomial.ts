import { digamma } from './digamma.js';
import type { NegativeBinomial } from './negative-binomial.js';
import { mean as meanOf, sum } from './sum.js';

/** ln sizes between which the likelihood equation is solved: beyond, Poisson does as well. */
const SMALLEST_LOG_SIZE = -14;
const LARGEST_LOG_SIZE = 18;

/**
 * Negative binomial distribution of greatest likelihood (Bliss & Fisher 1953, Biometrics 9:176):
 * the mean is the sample's, the size solves the likelihood equation, by bisection on its logarithm.
 *
 * Counts that vary no more than Poisson counts do (variance with divisor n not above the mean) have
 * no finite best size (Levin & Reeds 1977, Ann. Stat. 5:79): the fit is then Poisson, size infinite.
 *
 * @param counts whole, 0 or more, at least one
 * @throws RangeError for an empty list
 */
export function fitNegativeBinomial(counts: readonly number[]): NegativeBinomial {
  const mean = meanOf(counts);
  const variance = sum(counts.map((count) => (count - mean) ** 2)) / counts.length;
  if (variance <= mean) return { mean, size: Infinity };
  const score = (size: number): number =>
    sum(counts.map((count) => digamma(size + count) - digamma(size))) -
    counts.length * Math.log1p(mean / size);
  let low = SMALLEST_LOG_SIZE;
  let high = LARGEST_LOG_SIZE;
  if (score(Math.exp(high)) >= 0) return { mean, size: Infinity };
  for (let step = 0; step < 80; step += 1) {
    const middle = (low + high) / 2;
    if (score(Math.exp(middle)) > 0) low = middle;
    else high = middle;
  }
  return { mean, size: Math.exp((low + high) / 2) };
}
