/**
 * Sample quantile with linear interpolation between order statistics (type 7 of Hyndman & Fan
 * 1996, Am. Stat. 50:361; the default of R and NumPy).
 *
 * @param values at least one, in any order
 * @param p from 0 (the smallest) to 1 (the largest)
 * @throws RangeError for an empty list or a p outside 0 to 1
 * @example quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(values: readonly number[], p: number): number {
  return quantileOfSorted(Float64Array.from(values).sort(), p);
}

/**
 * The same for values that are sorted already, smallest first.
 *
 * @example quantileOfSorted(Float64Array.of(1, 2, 3, 4), 0.25) // 1.75
 */
export function quantileOfSorted(sorted: Float64Array, p: number): number {
  if (sorted.length === 0) throw new RangeError('quantile requires at least one value');
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantile requires p from 0 to 1, not ${p}`);
  const position = (sorted.length - 1) * p;
  const index = Math.floor(position);
  const lower = sorted[index] ?? NaN;
  const upper = sorted[index + 1] ?? lower;
  return lower + (position - index) * (upper - lower);
}
