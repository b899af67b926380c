/** Coefficients −B₂ₖ / 2k of the asymptotic series, k = 1 to 7 (B = Bernoulli numbers). */
const SERIES = [-1 / 12, 1 / 120, -1 / 252, 1 / 240, -1 / 132, 691 / 32760, -1 / 12] as const;

/**
 * Digamma function, the derivative of ln Γ(x), for x > 0.
 *
 * Asymptotic series from 16 up (Abramowitz & Stegun 1964, 6.3.18); below, the recurrence
 * ψ(x) = ψ(x + 1) − 1/x leads there.
 *
 * @throws RangeError unless x is over 0
 * @example digamma(1) // -0.5772156649015329
 */
export function digamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`digamma requires a number over 0, not ${x}`);
  let shifted = x;
  let behind = 0;
  while (shifted < 16) {
    behind += 1 / shifted;
    shifted += 1;
  }
  const inverse = 1 / (shifted * shifted);
  let series = 0;
  for (let k = SERIES.length - 1; k >= 0; k -= 1) {
    series = (series + (SERIES[k] ?? 0)) * inverse;
  }
  return Math.log(shifted) - 1 / (2 * shifted) + series - behind;
}
