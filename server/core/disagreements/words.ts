import type { Look } from '../align/looks.js';
import type { Snapshot } from '../model/snapshot.js';
import { englishName } from '../taxa/taxon-name.js';
import type { CandidateSet } from '../taxa/candidate-set.js';

/** How people and places are called in sentences. */
export interface Words {
  /** "A. Name", or "A. Name and B. Name" for several together. */
  observer(look: Pick<Look, 'observer'>): string;
  observers(looks: readonly Pick<Look, 'observer'>[]): string;
  person(id: string): string;
  /** "North arm", or "North arm and Outlet". */
  place(sections: readonly string[]): string;
  taxon(candidates: CandidateSet): string;
  /** 1234 → "1,234". */
  number(birds: number): string;
  /** "1 bird", "1,234 birds". */
  birds(birds: number): string;
}

export function wordsFor(snapshot: Snapshot): Words {
  const people = new Map(snapshot.people.map((person) => [person.id, person.name]));
  const sections = new Map(snapshot.sections.map((section) => [section.id, section.name]));
  const person = (id: string): string => people.get(id) ?? id;
  const observer = (look: Pick<Look, 'observer'>): string =>
    listed(look.observer.split('+').map(person));
  return {
    person,
    observer,
    observers: (looks) => listed(looks.map(observer)),
    place: (ids) => listed(ids.map((id) => sections.get(id) ?? id)),
    taxon: englishName,
    number: grouped,
    birds: (birds) => `${grouped(birds)} ${Math.round(birds) === 1 ? 'bird' : 'birds'}`,
  };
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length <= 1) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}

function grouped(birds: number): string {
  return String(Math.round(birds)).replace(/\B(?=(\d{3})+$)/g, ',');
}
