import { seededRandom, type SeededRandom } from '../../../server/core/math/seeded-random.js';
import type { ScannedBirds } from '../../../server/core/raft/small-count.js';
import type { CandidateSet } from '../../../server/core/taxa/candidate-set.js';

/** A made-up raft of endless size: true shares, and how alike birds of one patch are. */
export interface PatchyRaft {
  readonly kinds: readonly (readonly [candidates: CandidateSet, share: number])[];
  /** 0 to under 1. */
  readonly alikeness: number;
}

/**
 * A small count of so many birds, Dirichlet-multinomial, by Pólya's urn: each bird is of a kind with a
 * chance that grows with the birds of the kind drawn before it (Johnson, Kotz & Balakrishnan 1997,
 * Discrete Multivariate Distributions, chapter 40).
 */
function smallCountOf(
  { kinds, alikeness }: PatchyRaft,
  size: number,
  random: SeededRandom,
): readonly ScannedBirds[] {
  const numbers = kinds.map(() => 0);
  for (let drawn = 0; drawn < size; drawn += 1) {
    // θ = (1 − ρ) / ρ, both sides times ρ so that ρ = 0 is plain drawing.
    const weights = kinds.map(
      ([, share], k) => (1 - alikeness) * share + alikeness * (numbers[k] ?? 0),
    );
    let left = random.uniform() * (1 - alikeness + alikeness * drawn);
    const at = weights.findIndex((weight) => (left -= weight) < 0);
    const chosen = at < 0 ? kinds.length - 1 : at;
    numbers[chosen] = (numbers[chosen] ?? 0) + 1;
  }
  return kinds.map(([candidates], k) => ({ candidates, number: numbers[k] ?? 0 }));
}

export function smallCountsOf(
  raft: PatchyRaft,
  samples: number,
  size: number,
  seed: number,
): readonly (readonly ScannedBirds[])[] {
  const random = seededRandom(seed);
  return Array.from({ length: samples }, () => smallCountOf(raft, size, random));
}
