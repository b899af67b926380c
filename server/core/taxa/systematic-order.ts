import type { Species } from '../model/snapshot.js';
import { leafOf } from './leaf.js';

/**
 * Puts identifications in the order of the check-list: by their first species, finer ones before
 * coarser ones, unknown names last. A total order, so that sorting never depends on the input.
 */
export function bySystematicOrder(one: readonly Species[], other: readonly Species[]): number {
  const rank = (set: readonly Species[]): number =>
    Math.min(...set.map((species) => leafOf(species)?.rank ?? Number.MAX_SAFE_INTEGER));
  const difference = rank(one) - rank(other) || one.length - other.length;
  if (difference !== 0) return difference;
  const a = one.join('|');
  const b = other.join('|');
  return a < b ? -1 : a > b ? 1 : 0;
}
