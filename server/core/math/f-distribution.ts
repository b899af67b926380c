import { incompleteBeta } from './beta.js';
import { invertIncreasingFromZero } from './invert-increasing.js';

function checkArguments(name: string, numerator: number, denominator: number): void {
  if (!(numerator > 0) || !(denominator > 0)) {
    throw new RangeError(
      `${name} requires degrees of freedom over 0, not ${numerator} and ${denominator}`,
    );
  }
}

/**
 * Distribution function of F: the share below x (Abramowitz & Stegun 1964, 26.6.2).
 *
 * @param x at least 0
 * @param numerator degrees of freedom over 0, need not be whole
 * @param denominator degrees of freedom over 0, need not be whole
 * @throws RangeError outside these
 * @example fCdf(1, 2, 2) // 0.5
 */
export function fCdf(x: number, numerator: number, denominator: number): number {
  checkArguments('fCdf', numerator, denominator);
  if (!(x >= 0)) throw new RangeError(`fCdf requires x of at least 0, not ${x}`);
  if (x === Infinity) return 1;
  const total = numerator * x + denominator;
  return incompleteBeta(
    (numerator * x) / total,
    numerator / 2,
    denominator / 2,
    denominator / total,
  );
}

/**
 * Share of F above x, precise far out in the tail.
 *
 * @throws RangeError as `fCdf`
 * @example fUpperTail(1, 2, 2) // 0.5
 */
export function fUpperTail(x: number, numerator: number, denominator: number): number {
  checkArguments('fUpperTail', numerator, denominator);
  if (!(x >= 0)) throw new RangeError(`fUpperTail requires x of at least 0, not ${x}`);
  if (x === Infinity) return 0;
  const total = numerator * x + denominator;
  return incompleteBeta(
    denominator / total,
    denominator / 2,
    numerator / 2,
    (numerator * x) / total,
  );
}

/**
 * Quantile of F: the x below which the share p lies.
 *
 * @param p from 0 (0) to 1 (∞)
 * @throws RangeError outside 0 to 1, or for degrees of freedom of 0 or less
 * @example fQuantile(0.95, 5, 10) // 3.325834530413012
 */
export function fQuantile(p: number, numerator: number, denominator: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`fQuantile requires p from 0 to 1, not ${p}`);
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  return p <= 0.5
    ? invertIncreasingFromZero((x) => fCdf(x, numerator, denominator), p)
    : invertIncreasingFromZero((x) => -fUpperTail(x, numerator, denominator), p - 1);
}
