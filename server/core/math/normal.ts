import { lowerGamma, upperGamma } from './gamma.js';

/** Numerators and denominators of Wichura's rational approximations, highest power first, as doubles. */
const CENTRE = {
  above: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
    1971.5909503065513, 133.14166789178438, 3.3871328727963665,
  ],
  below: [
    5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
    687.1870074920579, 42.31333070160091, 1,
  ],
};
const NEAR_TAIL = {
  above: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684,
    3.6478483247632045, 5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  below: [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008,
    0.6897673349851, 1.6763848301838038, 2.053191626637759, 1,
  ],
};
const FAR_TAIL = {
  above: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
    0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  below: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
    0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
  ],
};

function rational(x: number, { above, below }: typeof CENTRE): number {
  const horner = (total: number, coefficient: number): number => total * x + coefficient;
  return above.reduce(horner) / below.reduce(horner);
}

/**
 * Distribution function of the standard normal distribution: the share below z.
 *
 * By the incomplete gamma function of ½ and z²/2 (Abramowitz & Stegun 1964, 26.2.30 with 6.5.16);
 * relative precision about 1e-14 in the lower tail too.
 *
 * @example normalCdf(0) // 0.5
 */
export function normalCdf(z: number): number {
  return z < 0 ? 0.5 * upperGamma(0.5, (z * z) / 2) : 0.5 + 0.5 * lowerGamma(0.5, (z * z) / 2);
}

/**
 * Quantile of the standard normal distribution: the z below which the share p lies.
 *
 * Algorithm AS 241 (Wichura 1988, Appl. Stat. 37:477), relative precision about 1e-16.
 *
 * @param p from 0 (−∞) to 1 (∞)
 * @throws RangeError outside 0 to 1
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`normalQuantile requires p from 0 to 1, not ${p}`);
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const centred = p - 0.5;
  if (Math.abs(centred) <= 0.425) return centred * rational(0.180625 - centred ** 2, CENTRE);
  const root = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const size = root <= 5 ? rational(root - 1.6, NEAR_TAIL) : rational(root - 5, FAR_TAIL);
  return centred < 0 ? -size : size;
}

/**
 * The |z| whose two tails together hold the probability p: an exact test's p on the z scale, so
 * that it is judged by the same limits (2 questioned, 3 serious) as a z from a formula.
 *
 * p = 1 gives 0; a p that is 0 by underflow gives ∞.
 *
 * @param p two-sided probability from 0 to 1
 * @throws RangeError outside 0 to 1
 * @example zOfTwoSidedP(0.05) // 1.959963984540054
 */
export function zOfTwoSidedP(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`zOfTwoSidedP requires p from 0 to 1, not ${p}`);
  return p === 1 ? 0 : -normalQuantile(p / 2);
}

/**
 * The z that a two-sided interval of this level reaches to on both sides.
 *
 * @param level over 0 and under 1, such as 0.95
 * @throws RangeError outside these
 * @example zOfLevel(0.95) // 1.959963984540054
 */
export function zOfLevel(level: number): number {
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`zOfLevel requires a level over 0 and under 1, not ${level}`);
  }
  return normalQuantile((1 + level) / 2);
}
