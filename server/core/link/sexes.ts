import type { TallyLine } from '../model/snapshot.js';

/**
 * Two records of one flock of which the sexes were told apart say the same, but for one time in ten
 * (common practice, no source).
 */
const TOLD_OTHERWISE = 0.1;

/** Flocks of a species differ in their share of males about its usual one as if drawn from so many. */
const SHARE_WORTH = 20;
const USUAL_SHARE = 0.55;

/** Males of a flock all of whose birds were told apart. */
export interface Males {
  readonly number: number;
  /** How likely it is that a flock of its size has just so many. */
  readonly byChance: number;
}

interface Sexed {
  readonly number: number;
  readonly males: Males | null;
}

/**
 * Log-likelihood ratio of the sexes in two records of equal number: one flock against two. `null` where
 * they were not told apart, or the numbers differ: then nobody knows whose sexes are missing.
 */
export function sexesLogRatio(a: Sexed, b: Sexed): number | null {
  if (a.males === null || b.males === null || a.number !== b.number) return null;
  const { byChance } = b.males;
  const same = a.males.number === b.males.number ? 1 - TOLD_OTHERWISE : 0;
  return Math.log((same + TOLD_OTHERWISE * byChance) / byChance);
}

/** What {@link sexesLogRatio} with another flock comes to at most; `null` where no sexes are known. */
export function mostFromSexes(flocks: readonly Sexed[]): number | null {
  const known = flocks.flatMap(({ males }) => (males === null ? [] : [males.byChance]));
  return known.length === 0 ? null : Math.log(1 / Math.min(...known));
}

/** `null` unless males and females of its lines add up to its number. */
export function malesIn(
  lines: readonly Pick<TallyLine, 'male' | 'female'>[],
  number: number,
): Males | null {
  let [males, told] = [0, 0];
  for (const { male, female } of lines) {
    if (male === null || female === null) return null;
    males += male;
    told += male + female;
  }
  return told === number ? { number: males, byChance: betaBinomial(males, number) } : null;
}

/** Chance of so many males among so many birds, the share drawn about the usual one. */
function betaBinomial(males: number, birds: number): number {
  const [alpha, beta] = [SHARE_WORTH * USUAL_SHARE, SHARE_WORTH * (1 - USUAL_SHARE)];
  let log = 0;
  for (let bird = 0; bird < birds; bird += 1) {
    log -= Math.log(SHARE_WORTH + bird);
    // The males first, then the females; the order is accounted for by the number of orders below.
    log += bird < males ? Math.log(alpha + bird) : Math.log(beta + bird - males);
  }
  for (let bird = 1; bird <= males; bird += 1) log += Math.log((birds - males + bird) / bird);
  return Math.exp(log);
}
