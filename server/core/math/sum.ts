/** Up to here a list is added up exactly; longer ones in slices of bits, which is faster. */
const SHORT = 32;
/** Below, slices would reach down to where doubles lose their digits. */
const TINY = 1e-200;
const LARGE = 1e280;

/**
 * Sum of a list, the same to the last bit in whatever order the list comes.
 *
 * Results must not depend on the order of submission or on observers' names, and plain floating sums
 * do. A short list is kept exactly, as a few numbers that do not overlap (Shewchuk 1997, Discrete
 * Comput. Geom. 18:305), and rounded once. Of a long one every number is cut into three slices at bit
 * positions that the largest gives; the sums of slices are exact (Demmel & Nguyen 2015, IEEE Trans.
 * Comput. 64:2060), and together hold at least 75 bits below the largest number. The empty sum is 0;
 * infinities and NaN come out as in plain addition.
 *
 * @example sum([0.1, 0.2, 0.3]) // 0.6
 */
export function sum(values: readonly number[] | Float64Array): number {
  if (values.length <= SHORT) return exactSum(values);
  let largest = 0;
  for (let i = 0; i < values.length; i += 1) {
    const size = Math.abs(values[i] ?? 0);
    // Not `>`, so that NaN is found too.
    if (!(size <= largest)) largest = size;
  }
  if (largest === 0) return 0;
  if (!(largest < LARGE)) return exactSum(values);
  return largest > TINY ? slicedSum(values, largest) : exactSum(values);
}

/**
 * Adding and taking off 1.5 × 2ᵏ rounds a number to a multiple of 2^(k − 52): k is chosen so that the
 * sum of all such multiples still fits into 53 bits.
 */
function slicedSum(values: readonly number[] | Float64Array, largest: number): number {
  const bits = Math.ceil(Math.log2(values.length)) + 2;
  const first = 1.5 * 2 ** (Math.floor(Math.log2(largest)) + 1 + bits);
  const step = 2 ** (bits - 53);
  const second = first * step;
  const third = second * step;
  let [high, middle, low] = [0, 0, 0];
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] ?? 0;
    const top = value + first - first;
    const rest = value - top;
    const next = rest + second - second;
    high += top;
    middle += next;
    low += rest - next + third - third;
  }
  return exactSum([high, middle, low]);
}

function exactSum(values: readonly number[] | Float64Array): number {
  const partials: number[] = [];
  for (let each of values) {
    let kept = 0;
    for (let i = 0; i < partials.length; i += 1) {
      let other = partials[i] ?? 0;
      if (Math.abs(each) < Math.abs(other)) [each, other] = [other, each];
      const high = each + other;
      const low = other - (high - each);
      if (low !== 0) {
        partials[kept] = low;
        kept += 1;
      }
      each = high;
    }
    partials[kept] = each;
    partials.length = kept + 1;
  }
  return rounded(partials, values);
}

/** Adds up parts that do not overlap, smallest first, with the last bit to even as if exact. */
function rounded(partials: readonly number[], values: readonly number[] | Float64Array): number {
  let index = partials.length - 1;
  if (index < 0) return 0;
  let total = partials[index] ?? 0;
  if (!Number.isFinite(total)) {
    let plain = 0;
    for (const value of values) plain += value;
    return plain;
  }
  let rest = 0;
  while (index > 0 && rest === 0) {
    index -= 1;
    const before = total;
    const next = partials[index] ?? 0;
    total = before + next;
    rest = next - (total - before);
  }
  // Halfway between two numbers: what lies below decides.
  const below = partials[index - 1] ?? 0;
  if ((rest < 0 && below < 0) || (rest > 0 && below > 0)) {
    const twice = rest * 2;
    const up = total + twice;
    if (up - total === twice) return up;
  }
  return total;
}

/**
 * Arithmetic mean, independent of order as `sum` is.
 *
 * @throws RangeError for an empty list
 * @example mean([1, 2, 6]) // 3
 */
export function mean(values: readonly number[] | Float64Array): number {
  if (values.length === 0) throw new RangeError('mean requires at least one value');
  return sum(values) / values.length;
}

/**
 * Sample variance with divisor n − 1, by two passes, less what rounding of the mean left (Chan, Golub
 * & LeVeque 1983, Am. Stat. 37:242).
 *
 * @throws RangeError for fewer than two values
 * @example sampleVariance([1, 2, 6]) // 7
 */
export function sampleVariance(values: readonly number[] | Float64Array): number {
  if (values.length < 2) throw new RangeError('sampleVariance requires at least two values');
  return squaredDeviations(values) / (values.length - 1);
}

/**
 * Sum of squared deviations from the mean. The mean as a double is off by a little; the square of
 * what the deviations add up to, over n, is what that adds.
 *
 * @throws RangeError for an empty list
 * @example squaredDeviations([1, 2, 6]) // 14
 */
export function squaredDeviations(values: readonly number[] | Float64Array): number {
  const centre = mean(values);
  const deviations = new Float64Array(values.length);
  const squares = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) {
    const deviation = (values[i] ?? NaN) - centre;
    deviations[i] = deviation;
    squares[i] = deviation * deviation;
  }
  const left = sum(deviations);
  return Math.max(0, sum(squares) - (left * left) / values.length);
}
