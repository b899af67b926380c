import type { Stock } from '../../server/core/compare/pairing-balance.js';
import {
  areLookAlikes,
  coarseness,
  keyOf,
  overlaps,
  type CandidateSet,
  type LookAlikes,
} from '../../server/core/taxa/candidate-set.js';

interface Totals {
  agreed: number;
  compatible: number;
  differently: number;
  onlyA: number;
  onlyB: number;
}

/**
 * The slow, obvious pairing balance: every bird is one bird, every way to pair them is tried, the
 * best is kept by agreed, then compatible, then differently, then least coarseness.
 * For a dozen birds at most.
 */
export function exhaustiveBalance(
  a: readonly Stock[],
  b: readonly Stock[],
  lookAlikes: LookAlikes,
): Totals {
  const birdsOf = (stock: readonly Stock[]): CandidateSet[] =>
    stock.flatMap((each) => Array.from({ length: each.number }, () => each.candidates));
  const birdsA = birdsOf(a);
  const birdsB = birdsOf(b);
  const memo = new Map<string, number[]>();

  // [agreed, compatible, differently, −coarseness] of the best pairing of the birds that are left.
  const best = (index: number, free: readonly CandidateSet[]): number[] => {
    const one = birdsA[index];
    if (one === undefined) return [0, 0, 0, 0];
    const key = `${index} ${free.map(keyOf).sort().join(',')}`;
    const known = memo.get(key);
    if (known !== undefined) return known;
    let found = best(index + 1, free);
    const tried = new Set<string>();
    free.forEach((other, position) => {
      if (tried.has(keyOf(other))) return;
      tried.add(keyOf(other));
      const gain = gainOf(one, other, lookAlikes);
      if (gain === null) return;
      const rest = best(
        index + 1,
        free.filter((_, each) => each !== position),
      );
      const sum = rest.map((value, level) => value + (gain[level] ?? 0));
      if (isBetter(sum, found)) found = sum;
    });
    memo.set(key, found);
    return found;
  };
  const [agreed = 0, compatible = 0, differently = 0] = best(0, birdsB);
  const paired = agreed + compatible + differently;
  return {
    agreed,
    compatible,
    differently,
    onlyA: birdsA.length - paired,
    onlyB: birdsB.length - paired,
  };
}

function gainOf(one: CandidateSet, other: CandidateSet, lookAlikes: LookAlikes): number[] | null {
  if (keyOf(one) === keyOf(other)) return [1, 0, 0, 0];
  if (overlaps(one, other)) return [0, 1, 0, -coarseness(one, other)];
  return areLookAlikes(one, other, lookAlikes) ? [0, 0, 1, 0] : null;
}

function isBetter(one: readonly number[], other: readonly number[]): boolean {
  for (let level = 0; level < one.length; level += 1) {
    const difference = (one[level] ?? 0) - (other[level] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return false;
}
