import type { Species } from '../model/snapshot.js';
import type { CandidateSet } from '../taxa/candidate-set.js';
import type { Chance } from './chance.js';
import { CONFUSIONS } from './confusions.js';
import { ALL_MISIDENTIFIED, LEAST_SHARE_MISIDENTIFIED, TO_GENUS } from './model.js';

/** So many true birds of one species, and what an observer calls them. */
export interface Named {
  readonly species: Species;
  readonly birds: number;
  readonly candidates: CandidateSet;
  readonly outcome: 'right' | 'misidentified' | 'left-coarser';
}

/**
 * What an observer calls the birds of one species in a flock.
 *
 * @param misidentified multiplies the species' rate
 * @param leavesCoarse the observer's habit of leaving birds at the pair
 */
export function identify(
  species: Species,
  birds: number,
  misidentified: number,
  leavesCoarse: number,
  chance: Chance,
): Named[] {
  const confusion = CONFUSIONS[species];
  if (confusion === undefined) {
    return [{ species, birds, candidates: [species], outcome: 'right' }];
  }
  const named: Named[] = [];
  let left = birds;
  if (chance.happens(misidentified * confusion.rate)) {
    const share = chance.happens(ALL_MISIDENTIFIED)
      ? 1
      : chance.between(LEAST_SHARE_MISIDENTIFIED, 1);
    const taken = Math.max(1, Math.round(birds * share));
    const candidates = [chance.oneOf(confusion.takenFor)];
    named.push({ species, birds: taken, candidates, outcome: 'misidentified' });
    left -= taken;
  }
  if (left === 0) return named;
  const coarse = confusion.pair.length > 1 && chance.happens(leavesCoarse * confusion.leftCoarse);
  if (!coarse) return [...named, { species, birds: left, candidates: [species], outcome: 'right' }];
  const candidates =
    confusion.genus !== null && chance.happens(TO_GENUS) ? confusion.genus : confusion.pair;
  return [...named, { species, birds: left, candidates, outcome: 'left-coarser' }];
}
