import { devianceTerm, stirlingError } from './gamma.js';
import { invertIncreasing } from './invert-increasing.js';

const TWO_UNITS_IN_THE_LAST_PLACE = 4.5e-16;
const SMALLEST = 1e-300;
const MOST_STEPS = 10_000_000;

/** xᵃ yᵇ / B(a, b), with x + y = 1, by Loader's form, which stays exact for large a and b. */
function betaKernel(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const deviance = devianceTerm(a, n * x) + devianceTerm(b, n * y);
  const stirling = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(stirling - deviance);
}

/** Continued fraction of the incomplete beta function (DLMF 8.17.22) after Lentz. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < SMALLEST ? SMALLEST : d);
  let fraction = d;
  for (let m = 1; m <= MOST_STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + even * d;
    c = 1 + even / c;
    d = 1 / (Math.abs(d) < SMALLEST ? SMALLEST : d);
    c = Math.abs(c) < SMALLEST ? SMALLEST : c;
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + odd * d;
    c = 1 + odd / c;
    d = 1 / (Math.abs(d) < SMALLEST ? SMALLEST : d);
    c = Math.abs(c) < SMALLEST ? SMALLEST : c;
    const change = d * c;
    fraction *= change;
    if (Math.abs(change - 1) <= TWO_UNITS_IN_THE_LAST_PLACE) return fraction;
  }
  throw new RangeError(`incompleteBeta did not settle for shapes ${a} and ${b} and x ${x}`);
}

/**
 * Regularised incomplete beta function Iₓ(a, b): the share of a beta distribution below x.
 *
 * Purpose: binomial, Student t and F tails all follow from it. Continued fraction on the side of
 * the mean where it is quick, the complement on the other. Relative precision about 1e-13.
 *
 * @param x from 0 to 1
 * @param a first shape, over 0
 * @param b second shape, over 0
 * @param y 1 − x, for callers who know it more precisely than 1 − x would give
 * @throws RangeError outside these
 * @example incompleteBeta(0.5, 2, 3) // 0.6875
 */
export function incompleteBeta(x: number, a: number, b: number, y = 1 - x): number {
  if (!(a > 0) || !(b > 0) || !(x >= 0 && x <= 1)) {
    throw new RangeError(
      `incompleteBeta requires shapes over 0 and x from 0 to 1, not ${a}, ${b} and ${x}`,
    );
  }
  if (x === 0) return 0;
  if (y === 0) return 1;
  if (x <= (a + 1) / (a + b + 2)) return (betaKernel(x, y, a, b) * betaFraction(x, a, b)) / a;
  return 1 - (betaKernel(y, x, b, a) * betaFraction(y, b, a)) / b;
}

/**
 * Quantile of the beta distribution: the x below which the share p lies.
 *
 * @param p from 0 to 1
 * @throws RangeError outside the allowed values
 * @example betaQuantile(0.5, 1, 1) // 0.5
 */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`betaQuantile requires p from 0 to 1, not ${p}`);
  if (p === 0) return 0;
  if (p === 1) return 1;
  return invertIncreasing((x) => incompleteBeta(x, a, b), p, 0, 1);
}
