import { normalQuantile } from '../math/normal.js';
import { seededRandom, type SeededRandom } from '../math/seeded-random.js';

/** Draws from the distributions that a simulated count needs, all from one seed. */
export interface Chance {
  /** True with this probability. */
  happens(probability: number): boolean;
  /** Between the two, each value as likely. */
  between(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
  /** One of the things, by their weights; at least one weight over 0. */
  oneOf<Thing>(things: readonly (readonly [weight: number, thing: Thing])[]): Thing;
  /** How many of n come out, each with this probability. */
  binomial(n: number, probability: number): number;
  /** A generator of its own, so that what is drawn from it does not move what others draw. */
  split(): Chance;
}

/**
 * @param seed whole number from 0 to 2³² − 1
 * @throws RangeError outside these
 */
export function chanceFrom(seed: number): Chance {
  return chanceOf(seededRandom(seed));
}

function chanceOf(random: SeededRandom): Chance {
  // Never 0 or 1, which a normal quantile turns into infinity.
  const open = (): number => (random.bits() + 0.5) / 4294967296;
  const happens = (probability: number): boolean => open() < probability;
  return {
    happens,
    between: (low, high) => low + (high - low) * open(),
    normal: () => normalQuantile(open()),
    oneOf: (things) => {
      let left = open() * things.reduce((sum, [weight]) => sum + weight, 0);
      const found = things.find(([weight]) => {
        left -= weight;
        return left < 0;
      });
      const [, thing] = found ?? things[things.length - 1] ?? [];
      if (thing === undefined) throw new RangeError('oneOf requires at least one thing');
      return thing;
    },
    binomial: (n, probability) =>
      Array.from({ length: n }, () => happens(probability)).filter(Boolean).length,
    split: () => chanceOf(seededRandom(random.bits())),
  };
}
