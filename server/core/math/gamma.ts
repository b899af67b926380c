const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;
const RELATIVE_PRECISION = 1e-16;
const TWO_UNITS_IN_THE_LAST_PLACE = 4.5e-16;
const SMALLEST = 1e-300;
const MOST_STEPS = 10_000_000;

/** Coefficients B₂ₖ / (2k(2k − 1)) of Stirling's series, k = 1 to 8 (B = Bernoulli numbers). */
const STIRLING = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
] as const;

/**
 * Error of Stirling's formula: ln Γ(x) − ((x − ½) ln x − x + ½ ln 2π), for x > 0.
 *
 * Stirling's series from 16 up (Abramowitz & Stegun 1964, 6.1.41), where its eight terms are exact
 * to double precision; below, the recurrence Γ(x + 1) = x Γ(x) leads there.
 *
 * @example stirlingError(1) // 0.08106146679532726
 */
export function stirlingError(x: number): number {
  if (!(x > 0)) throw new RangeError(`stirlingError requires a number over 0, not ${x}`);
  let shifted = x;
  let product = 1;
  while (shifted < 16) {
    product *= shifted;
    shifted += 1;
  }
  const inverse = 1 / shifted;
  let series = 0;
  for (let k = STIRLING.length - 1; k >= 0; k -= 1) {
    series = series * inverse * inverse + (STIRLING[k] ?? 0);
  }
  series *= inverse;
  if (shifted === x) return series;
  const logGammaShifted = (shifted - 0.5) * Math.log(shifted) - shifted + HALF_LOG_TWO_PI + series;
  return logGammaShifted - Math.log(product) - ((x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI);
}

/**
 * Natural logarithm of the gamma function, for x > 0.
 *
 * @example logGamma(5) // Math.log(24)
 */
export function logGamma(x: number): number {
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingError(x);
}

/**
 * Deviance term x ln(x / m) + m − x, without the cancellation that the plain formula has where x
 * and m are close (Loader 2000, Fast and accurate computation of binomial probabilities).
 *
 * @example devianceTerm(3, 3) // 0
 */
export function devianceTerm(x: number, m: number): number {
  if (x === 0) return m;
  if (Math.abs(x - m) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const ratio = (x - m) / (x + m);
  let total = (x - m) * ratio;
  let power = 2 * x * ratio;
  for (let odd = 3; ; odd += 2) {
    power *= ratio * ratio;
    const next = total + power / odd;
    if (next === total) return total;
    total = next;
  }
}

/** xᵃ e⁻ˣ / Γ(a + 1) by Loader's form, which stays exact for large a. */
function gammaKernel(a: number, x: number): number {
  return Math.exp(-stirlingError(a) - devianceTerm(a, x)) / Math.sqrt(2 * Math.PI * a);
}

/** Lower tail by its power series (Abramowitz & Stegun 6.5.29): quick for x < a + 1. */
function lowerBySeries(a: number, x: number): number {
  let term = 1;
  let total = 1;
  for (let n = 1; term > total * RELATIVE_PRECISION; n += 1) {
    term *= x / (a + n);
    total += term;
  }
  return gammaKernel(a, x) * total;
}

/** Upper tail by its continued fraction (Abramowitz & Stegun 6.5.31) after Lentz: x ≥ a + 1. */
function upperByFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / SMALLEST;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n <= MOST_STEPS; n += 1) {
    const numerator = -n * (n - a);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < SMALLEST) d = SMALLEST;
    c = b + numerator / c;
    if (Math.abs(c) < SMALLEST) c = SMALLEST;
    d = 1 / d;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) <= TWO_UNITS_IN_THE_LAST_PLACE) {
      return gammaKernel(a, x) * a * fraction;
    }
  }
  throw new RangeError(`upperGamma did not settle for shape ${a} and x ${x}`);
}

function checkArguments(name: string, a: number, x: number): void {
  if (!(a > 0) || !(x >= 0)) {
    throw new RangeError(`${name} requires a shape over 0 and x of at least 0, not ${a} and ${x}`);
  }
}

/**
 * Regularised lower incomplete gamma function P(a, x): the share of a gamma distribution of shape
 * a below x. Relative precision about 1e-14. P(a, 0) = 0, P(a, ∞) = 1.
 *
 * @throws RangeError unless a > 0 and x ≥ 0
 * @example lowerGamma(1, 2) // 1 - Math.exp(-2)
 */
export function lowerGamma(a: number, x: number): number {
  checkArguments('lowerGamma', a, x);
  if (x === 0) return 0;
  if (x === Infinity) return 1;
  return x < a + 1 ? lowerBySeries(a, x) : 1 - upperByFraction(a, x);
}

/**
 * Regularised upper incomplete gamma function Q(a, x) = 1 − P(a, x), precise far out in the tail.
 *
 * @throws RangeError unless a > 0 and x ≥ 0
 * @example upperGamma(1, 2) // Math.exp(-2)
 */
export function upperGamma(a: number, x: number): number {
  checkArguments('upperGamma', a, x);
  if (x === 0) return 1;
  if (x === Infinity) return 0;
  return x < a + 1 ? 1 - lowerBySeries(a, x) : upperByFraction(a, x);
}
