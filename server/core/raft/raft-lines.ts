import { logDeviation } from '../compare/counting-error.js';
import { largestRemainder } from '../math/largest-remainder.js';
import { zOfLevel } from '../math/normal.js';
import { keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import type { RaftComposition } from './compose-raft.js';

/** Birds of a raft at one identification. */
export interface RaftLine {
  readonly candidates: CandidateSet;
  /** Whole birds. */
  readonly number: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A raft's total as tally lines, one an identification: whole birds that add up to the total exactly,
 * by largest remainder. Birds that were scanned but not identified stay at their pair or group. What
 * was seen in a scan was there, so an identification has a bird at least while there are enough.
 *
 * The interval has the counting error of the total in it as well as that of the share, by the distances
 * of both on the ln scale (MOVER: Zou & Donner 2008, Stat. Med. 27:1693).
 *
 * @param total whole birds, 0 or more
 * @param cv coefficient of variation of the total, by the protocol's table for its method
 * @returns in the order of the composition; equal remainders go to what more birds were scanned of, then
 *   by candidate set
 */
export function raftLines(
  total: number,
  cv: number,
  { identifications }: RaftComposition,
): readonly RaftLine[] {
  const numbers = sharedOut(total, identifications);
  const ofTotal = zOfLevel(0.95) * logDeviation(cv);
  return identifications.map(({ candidates, share, low, high }) => {
    const number = numbers.get(keyOf(candidates)) ?? 0;
    const apart = (limit: number): number => Math.hypot(Math.log(limit / share), ofTotal);
    return {
      candidates,
      number,
      low: Math.min(number, Math.floor(total * share * Math.exp(-apart(low)))),
      high: Math.max(number, Math.ceil(total * share * Math.exp(apart(high)))),
    };
  });
}

function sharedOut(
  total: number,
  identifications: RaftComposition['identifications'],
): ReadonlyMap<string, number> {
  const sorted = identifications
    .map(({ candidates, scanned }) => ({ key: keyOf(candidates), scanned }))
    .sort((one, other) => other.scanned - one.scanned || (one.key < other.key ? -1 : 1));
  const single = new Set<string>();
  for (;;) {
    const others = sorted.filter(({ key }) => !single.has(key));
    const parts = largestRemainder(
      total - single.size,
      others.map(({ scanned }) => scanned),
    );
    const without = others.filter((_, at) => parts[at] === 0);
    if (without.length === 0 || total < sorted.length) {
      return new Map([
        ...[...single].map((key) => [key, 1] as const),
        ...others.map(({ key }, at) => [key, parts[at] ?? 0] as const),
      ]);
    }
    for (const { key } of without) single.add(key);
  }
}
