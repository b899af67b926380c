import { plural } from '@lingui/core/macro';
import { birds as written } from './words.js';

/** How many of what, as it stands in a list or in the middle of a sentence: `1 bird`, `1,250 birds`. */
export function countedBirds(count: number): string {
  const number = written(count);
  return plural(count, { one: `${number} bird`, other: `${number} birds` });
}

export function countedLines(count: number): string {
  return plural(count, { one: '# line', other: '# lines' });
}

export function countedTaxa(count: number): string {
  return plural(count, { one: '# taxon', other: '# taxa' });
}

export function countedSamples(count: number): string {
  return plural(count, { one: '# scan sample', other: '# scan samples' });
}
