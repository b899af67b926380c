import type { Species } from '../model/snapshot.js';

/** A candidate set: the species an identification could be, sorted, no repeats, at least one. */
export type CandidateSet = readonly Species[];

/** Equal sets have equal keys; `|` is in no scientific name. */
export function keyOf(set: CandidateSet): string {
  return set.join('|');
}

/** The species in both, sorted. */
export function intersection(a: CandidateSet, b: CandidateSet): CandidateSet {
  const inB = new Set(b);
  return a.filter((species) => inB.has(species));
}

/** The species in either, sorted. */
export function union(a: CandidateSet, b: CandidateSet): CandidateSet {
  return [...new Set([...a, ...b])].sort();
}

export function overlaps(a: CandidateSet, b: CandidateSet): boolean {
  const inB = new Set(b);
  return a.some((species) => inB.has(species));
}

export function isWithin(inner: CandidateSet, outer: CandidateSet): boolean {
  const inOuter = new Set(outer);
  return inner.every((species) => inOuter.has(species));
}

/** |S ∪ T| − |S ∩ T|: how many species apart two overlapping identifications are. */
export function coarseness(a: CandidateSet, b: CandidateSet): number {
  const shared = intersection(a, b).length;
  return a.length + b.length - 2 * shared;
}

/** Which species observers confuse, in a form that is quick to ask. */
export type LookAlikes = ReadonlyMap<Species, ReadonlySet<Species>>;

export function lookAlikesFrom(pairs: readonly (readonly [Species, Species])[]): LookAlikes {
  const partners = new Map<Species, Set<Species>>();
  const add = (one: Species, other: Species): void => {
    const known = partners.get(one) ?? new Set<Species>();
    known.add(other);
    partners.set(one, known);
  };
  for (const [one, other] of pairs) {
    add(one, other);
    add(other, one);
  }
  return partners;
}

/** True where some species of the one is confused with some species of the other. */
export function areLookAlikes(a: CandidateSet, b: CandidateSet, lookAlikes: LookAlikes): boolean {
  return a.some((species) => {
    const partners = lookAlikes.get(species);
    return partners !== undefined && b.some((other) => partners.has(other));
  });
}
