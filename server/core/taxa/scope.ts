import type { Scope, Species } from '../model/snapshot.js';
import { LEAVES, leafOf } from './leaf.js';
import { taxonName } from './taxon-name.js';

/**
 * Whether a tally of this scope set out to count birds that could be any of these species: true if
 * any candidate is sought. Waterfowl are the Anatidae: ducks, geese and swans.
 */
export function inScope(scope: Scope, candidates: readonly Species[]): boolean {
  switch (scope.kind) {
    case 'all-waterbirds':
      return true;
    case 'waterfowl':
      return candidates.some((name) => leafOf(name)?.family === 'Anatidae');
    case 'taxa':
      return candidates.some((name) => scope.species.includes(name));
  }
}

/** A scope as it is written in `tallies.csv`: a word, or taxa joined by ", ". */
export function scopeText(scope: Scope): string {
  return scope.kind === 'taxa'
    ? scope.species.map((name) => taxonName([name])).join(', ')
    : scope.kind;
}

/** The same scope without some species: what a tally still claims when lines of it are left out. */
export function withoutSpecies(scope: Scope, left: readonly Species[]): Scope {
  if (left.length === 0) return scope;
  const sought = LEAVES.map((leaf) => leaf.species).filter((name) => inScope(scope, [name]));
  return { kind: 'taxa', species: sought.filter((name) => !left.includes(name)) };
}
