import type { Birds } from '../score/truth.js';
import type { Species } from '../model/snapshot.js';

/** Adds birds up by place and species. */
export class BirdsByPlace {
  private readonly places = new Map<string, Map<Species, number>>();

  /** Places that are to be there even without birds. */
  constructor(places: readonly string[] = []) {
    for (const place of places) this.places.set(place, new Map());
  }

  add(place: string, species: Species, birds: number): void {
    const known = this.places.get(place) ?? new Map<Species, number>();
    known.set(species, (known.get(species) ?? 0) + birds);
    this.places.set(place, known);
  }

  /** Places and species in order of their names. */
  byPlace(): Readonly<Record<string, Birds>> {
    return Object.fromEntries(
      sortedEntries(this.places).map(([place, birds]) => [place, birdsFrom(birds)]),
    );
  }

  total(): Birds {
    const total = new Map<Species, number>();
    for (const birds of this.places.values()) {
      for (const [species, more] of birds) total.set(species, (total.get(species) ?? 0) + more);
    }
    return birdsFrom(total);
  }
}

function birdsFrom(birds: ReadonlyMap<Species, number>): Birds {
  return Object.fromEntries(sortedEntries(birds).filter(([, number]) => number > 0));
}

function sortedEntries<Value>(map: ReadonlyMap<string, Value>): [string, Value][] {
  return [...map].sort(([one], [other]) => (one < other ? -1 : 1));
}
