import type { Look } from '../align/looks.js';
import type { Stock } from '../compare/pairing-balance.js';
import { listed, say, type Said, type Saying } from '../model/saying.js';
import type { Snapshot } from '../model/snapshot.js';
import type { CandidateSet } from '../taxa/candidate-set.js';

/** How people, places, taxa and numbers are called in sentences. */
export interface Words {
  /** "A. Name", or "A. Name and B. Name" for several together. */
  observer(look: Pick<Look, 'observer'>): Said;
  observers(looks: readonly Pick<Look, 'observer'>[]): Said;
  person(id: string): string;
  /** "North arm", or "North arm and Outlet". */
  place(sections: readonly string[]): Said;
  /** "in North arm". */
  inPlace(sections: readonly string[]): Saying;
  /** "flying through North arm". */
  throughPlace(sections: readonly string[]): Saying;
  taxon(candidates: CandidateSet): Said;
  /** "1,234". */
  number(birds: number): Said;
  /** "1 bird", "1,234 birds". */
  birds(birds: number): Saying;
  /** "1,234 Redhead". */
  birdsOf(line: Stock): Saying;
  /** "1,234 Redhead, 5 Canvasback and 1 Aythya sp.". */
  lines(lines: readonly Stock[]): Said;
}

export function wordsFor(snapshot: Snapshot): Words {
  const people = new Map(snapshot.people.map((person) => [person.id, person.name]));
  const sections = new Map(snapshot.sections.map((section) => [section.id, section.name]));
  const person = (id: string): string => people.get(id) ?? id;
  const observer = (look: Pick<Look, 'observer'>): Said =>
    listed(look.observer.split('+').map(person));
  const place = (ids: readonly string[]): Said => listed(ids.map((id) => sections.get(id) ?? id));
  return {
    person,
    observer,
    observers: (looks) => listed(looks.map(observer)),
    place,
    // Languages other than English tell one section from several.
    inPlace: (ids) =>
      ids.length === 1
        ? say('in {place}', { place: place(ids) })
        : say('in {places}', { places: place(ids) }),
    throughPlace: (ids) => say('flying through {place}', { place: place(ids) }),
    taxon,
    number,
    birds: birdsInWords,
    birdsOf,
    lines: (lines) => listed(lines.map(birdsOf)),
  };
}

function taxon(candidates: CandidateSet): Said {
  return { taxon: candidates };
}

function number(birds: number): Said {
  return { birds: Math.round(birds) };
}

function birdsOf(line: Stock): Saying {
  return say('{number} {taxon}', { number: number(line.number), taxon: taxon(line.candidates) });
}

function birdsInWords(birds: number): Saying {
  switch (Math.round(birds)) {
    case 0:
      return say('0 birds');
    case 1:
      return say('1 bird');
    default:
      return say('{number} birds', { number: number(birds) });
  }
}
