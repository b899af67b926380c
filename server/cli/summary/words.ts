import type { Look } from '../../core/align/looks.js';
import { wordsFor as sayingsFor } from '../../core/disagreements/words.js';
import { ENGLISH, writtenIn, type Said } from '../../core/model/saying.js';
import type { Snapshot } from '../../core/model/snapshot.js';
import type { CandidateSet } from '../../core/taxa/candidate-set.js';

/** How people, places, taxa and numbers are called in the summaries, which are in English. */
export interface Words {
  observer(look: Pick<Look, 'observer'>): string;
  person(id: string): string;
  place(sections: readonly string[]): string;
  taxon(candidates: CandidateSet): string;
  number(birds: number): string;
}

export function wordsFor(snapshot: Snapshot): Words {
  const words = sayingsFor(snapshot);
  const english = (said: Said): string => writtenIn(said, ENGLISH);
  return {
    observer: (look) => english(words.observer(look)),
    person: (id) => words.person(id),
    place: (sections) => english(words.place(sections)),
    taxon: (candidates) => english(words.taxon(candidates)),
    number: (birds) => english(words.number(birds)),
  };
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
