const TWO_TO_32 = 4294967296;
/** Up to here bits × n is exact in a double. */
const MOST_KINDS = 2097152;

/** A stream of made-up random numbers, the same for the same seed on every machine. */
export interface SeededRandom {
  /** The next 32 bits, 0 to 2³² − 1. */
  bits(): number;
  /** At least 0 and under 1, with 53 random bits. */
  uniform(): number;
  /** A whole number from 0 to n − 1, each as likely; n from 1 to 2²¹. */
  integer(n: number): number;
}

function rotateLeft(x: number, by: number): number {
  return (x << by) | (x >>> (32 - by));
}

/**
 * Generator xoshiro128** 1.1 from its four words of state (Blackman & Vigna 2021, Scrambled linear
 * pseudorandom number generators, ACM Trans. Math. Softw. 47:36).
 *
 * @param state four 32-bit words, not all 0
 * @throws RangeError if all are 0
 * @example randomFromState([1, 2, 3, 4]).bits() // 11520
 */
export function randomFromState(state: readonly [number, number, number, number]): SeededRandom {
  let [s0, s1, s2, s3] = state;
  if ((s0 | s1 | s2 | s3) === 0) {
    throw new RangeError('randomFromState requires at least one word that is not 0');
  }
  const bits = (): number => {
    const result = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9) >>> 0;
    const shifted = s1 << 9;
    s2 ^= s0;
    s3 ^= s1;
    s1 ^= s2;
    s0 ^= s3;
    s2 ^= shifted;
    s3 = rotateLeft(s3, 11);
    return result;
  };
  return {
    bits,
    uniform: () => ((bits() >>> 5) * 67108864 + (bits() >>> 6)) / 9007199254740992,
    integer: (n) => {
      if (!(n >= 1 && n <= MOST_KINDS) || n % 1 !== 0) {
        throw new RangeError(`integer requires a whole number from 1 to 2^21, not ${n}`);
      }
      // Lemire (2019, ACM Trans. Model. Comput. Simul. 29:3): the high word of bits × n. Low words
      // under (2³² − n) mod n would make some results likelier: drawn again.
      let drawn = bits();
      if (Math.imul(drawn, n) >>> 0 < n) {
        const threshold = (TWO_TO_32 - n) % n;
        while (Math.imul(drawn, n) >>> 0 < threshold) drawn = bits();
      }
      return Math.floor((drawn * n) / TWO_TO_32);
    },
  };
}

/**
 * Seeded generator: the four words of state come from the seed by SplitMix with 32 bits (the golden
 * ratio as step, the finaliser of MurmurHash3), as the authors of xoshiro advise for seeding.
 *
 * Purpose: the only source of chance in the core, for bootstraps and simulated counts.
 *
 * @param seed whole number from 0 to 2³² − 1
 * @throws RangeError outside these
 * @example seededRandom(1).integer(6) === seededRandom(1).integer(6) // true
 */
export function seededRandom(seed: number): SeededRandom {
  if (!Number.isInteger(seed) || seed < 0 || seed > 4294967295) {
    throw new RangeError(`seededRandom requires a whole seed from 0 to 2^32 - 1, not ${seed}`);
  }
  let counter = seed;
  const word = (): number => {
    counter = (counter + 0x9e3779b9) | 0;
    let mixed = counter;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return mixed ^ (mixed >>> 16);
  };
  return randomFromState([word(), word(), word(), word()]);
}
