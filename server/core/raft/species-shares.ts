import { expectationMaximisation } from '../estimate/expectation-maximisation.js';
import { inverseOfPositiveDefinite } from '../math/cholesky.js';
import { sum } from '../math/sum.js';
import type { Species } from '../model/snapshot.js';
import type { ScannedBirds } from './small-count.js';

/** A species' estimated share of a raft. */
export interface SpeciesShare {
  readonly species: Species;
  readonly share: number;
  /** As many fully identified birds would say as much about the share; at most all scanned birds. */
  readonly birds: number;
}

/**
 * Each species' share of the scanned birds, pairs and groups shared out by the identified share: EM on
 * partially classified counts (Dempster, Laird & Rubin 1977, J. R. Stat. Soc. B 39:1). An estimate
 * beside the count: it takes it that whether a bird was identified does not depend on its species.
 *
 * What a share is known from is p (1 − p) over its variance, by the information that the counts hold as
 * observed (Louis 1982, J. R. Stat. Soc. B 44:226): of ten birds left at a pair less is known than of ten
 * named ones.
 *
 * A pair or group is shared out only if some birds of each of its species were identified: otherwise
 * nothing says how it divides, and none of its species has a share.
 *
 * @param pooled birds of all small counts together, one entry an identification, numbers over 0
 * @returns the species that have one, in the order of their names
 */
export function speciesShares(pooled: readonly ScannedBirds[]): readonly SpeciesShare[] {
  const identified = new Set(
    pooled
      .filter(({ candidates }) => candidates.length === 1)
      .flatMap(({ candidates }) => candidates),
  );
  const isShared = ({ candidates }: ScannedBirds): boolean =>
    candidates.every((each) => identified.has(each));
  const open = new Set(
    pooled.filter((each) => !isShared(each)).flatMap(({ candidates }) => candidates),
  );
  const known = pooled.filter(isShared);
  const species = [...identified].sort();
  const all = sum(pooled.map(({ number }) => number));
  const counts = known.map(({ candidates, number }) => ({
    categories: candidates.map((each) => species.indexOf(each)),
    number,
  }));
  const { probabilities } = expectationMaximisation(
    counts,
    species.map(() => 1 / species.length),
  );
  const ofKnown = sum(known.map(({ number }) => number)) / all;
  const variances = variancesOf(counts, probabilities);
  return species.flatMap((each, at) => {
    if (open.has(each)) return [];
    const probability = probabilities[at] ?? 0;
    const variance = variances?.[at] ?? 0;
    const birds =
      variance > 0 ? Math.min(all, (probability * (1 - probability)) / variance / ofKnown) : all;
    return [{ species: each, share: probability * ofKnown, birds }];
  });
}

/**
 * Variances of shares that add up to 1, from the observed information of all but the last of them;
 * `null` where they cannot be told (a single species).
 */
function variancesOf(
  counts: readonly { readonly categories: readonly number[]; readonly number: number }[],
  probabilities: readonly number[],
): readonly number[] | null {
  const last = probabilities.length - 1;
  if (last < 1) return null;
  const free = Array.from({ length: last }, (_, at) => at);
  // d/dp of ln Σ p over a count's categories, when the last share gives way to the one that moves.
  const slope = (categories: readonly number[], at: number): number =>
    (categories.includes(at) ? 1 : 0) - (categories.includes(last) ? 1 : 0);
  const matrix = Float64Array.from(
    free.flatMap((a) =>
      free.map((b) =>
        sum(
          counts.map(({ categories, number }) => {
            const all = sum(categories.map((each) => probabilities[each] ?? 0));
            return (number * slope(categories, a) * slope(categories, b)) / all ** 2;
          }),
        ),
      ),
    ),
  );
  const inverse = inverseOfPositiveDefinite(matrix, last);
  if (inverse === null) return null;
  const variances = free.map((at) => inverse[at * last + at] ?? 0);
  return [...variances, sum(inverse)];
}
