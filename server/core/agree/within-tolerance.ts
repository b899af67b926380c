import { wilsonInterval } from './proportion-interval.js';

/**
 * Two counts whose smaller one is at least 80 % of the larger are within tolerance: a fifth is about
 * the error of one block count of a resting flock (Kersten, Rappoldt & Smit 1981, Limosa 54:37).
 */
const TOLERANCE = 0.2;

/**
 * True where two counts lie within a tolerance of each other, as a share of the larger one. Two zeros
 * do; a zero and another number do not.
 *
 * @param tolerance from 0 (equal) to under 1
 * @example isWithinTolerance(80, 100, 0.2) // true
 */
export function isWithinTolerance(one: number, other: number, tolerance = TOLERANCE): boolean {
  // A hair of rounding: 0.8 is no double.
  return Math.min(one, other) >= (1 - tolerance) * Math.max(one, other) * (1 - 1e-12);
}

/**
 * Share of counts of the same things that two observers have within tolerance of each other, with
 * Wilson's interval: things are taken as independent.
 *
 * @returns `value: null` without things
 * @throws RangeError for lists of different length, or numbers below 0
 * @example percentWithinTolerance([100, 100], [81, 79], 0.2).value // 0.5
 */
export function percentWithinTolerance(
  x: readonly number[],
  y: readonly number[],
  tolerance = TOLERANCE,
  level = 0.95,
): { value: number | null; low: number | null; high: number | null; n: number } {
  const n = x.length;
  let within = 0;
  let counts = y.length === n;
  for (let thing = 0; thing < n; thing += 1) {
    const [one, other] = [x[thing] ?? NaN, y[thing] ?? NaN];
    counts &&= one >= 0 && other >= 0;
    if (isWithinTolerance(one, other, tolerance)) within += 1;
  }
  if (!counts) {
    throw new RangeError(
      `percentWithinTolerance requires two lists of counts of the same length, not ${n} and ${y.length}`,
    );
  }
  if (n === 0) return { value: null, low: null, high: null, n };
  return { value: within / n, ...wilsonInterval(within, n, level), n };
}
