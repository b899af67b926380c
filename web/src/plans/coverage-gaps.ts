import { missingFrom, type CoverageEntry } from './coverage-words.js';

/**
 * What a section lacks in a window, those still to come taken as coming: nobody at all, no full
 * tally, or no second independent one. `null`: nothing is lacking.
 */
export type Gap = 'nobody' | 'part-only' | 'no-second';

/** @param isClosed nothing comes in any more, so only what is in counts */
export function gapOf(entry: CoverageEntry | undefined, isClosed: boolean): Gap | null {
  if (entry === undefined) return 'nobody';
  // Whether two who are still to come share a party is known only when their tallies are in.
  const stillToCome = isClosed ? 0 : missingFrom(entry).length;
  const full = entry.independentTallies + stillToCome;
  if (full >= 2) return null;
  if (full === 1) return 'no-second';
  return entry.submitted.length > 0 ? 'part-only' : 'nobody';
}
