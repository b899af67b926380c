import type { Interval } from '../math/bootstrap.js';
import { lowerQuantile, upperQuantile } from '../math/negative-binomial.js';
import { normalCdf } from '../math/normal.js';
import { studentTQuantile } from '../math/student-t.js';
import { fitNegativeBinomial } from '../math/fit-negative-binomial.js';

/**
 * Where the next year's number is to be expected, from those of earlier years taken as alike: a
 * prediction interval of the negative binomial distribution that fits them best (Poisson where they
 * vary no more than that), in whole birds.
 *
 * A fit to few years is too sure of itself. So its tails are taken as far out as an interval for one
 * more normal number would reach in standard deviations of the fit, t · √((n + 1) / (n − 1)), which
 * makes good for the unknown mean, for the variance with divisor n, and for z in place of t (exact
 * for normal numbers, by analogy for these; a test holds the coverage against made-up years).
 *
 * Edge cases: years without any bird give 0 to 0. Trends are not seen.
 *
 * @param numbers of earlier years, at least two
 * @param level such as 0.95
 * @throws RangeError for fewer than two years
 */
export function expectedSpan(numbers: readonly number[], level: number): Interval {
  const years = numbers.length;
  if (years < 2) throw new RangeError(`expectedSpan requires at least two years, not ${years}`);
  const fit = fitNegativeBinomial(numbers);
  if (fit.mean === 0) return { low: 0, high: 0 };
  const reach = studentTQuantile((1 + level) / 2, years - 1) * Math.sqrt((years + 1) / (years - 1));
  const tail = normalCdf(-reach);
  return { low: lowerQuantile(tail, fit), high: upperQuantile(tail, fit) };
}
