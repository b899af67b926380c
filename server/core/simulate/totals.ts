import { keyOf } from '../taxa/candidate-set.js';
import type { Chance } from './chance.js';
import { countBirds } from './count-birds.js';
import type { Observer } from './observer.js';
import type { Setting, SightedLine, Sighting } from './sightings.js';

/** One line a taxon for all flocks together, in order of when its first birds were seen. */
export function totalsOf(
  sightings: readonly Sighting[],
  observer: Observer,
  { options, protocol }: Setting,
  chance: Chance,
): SightedLine[] {
  const byTaxon = new Map<string, SightedLine[]>();
  for (const line of sightings.flatMap(({ lines }) => lines)) {
    const key = keyOf(line.candidates);
    byTaxon.set(key, [...(byTaxon.get(key) ?? []), line]);
  }
  return [...byTaxon.values()].flatMap((lines) => {
    const [first] = lines;
    if (first === undefined) return [];
    const named = lines.flatMap((line) => line.named);
    const birds = named.reduce((sum, each) => sum + each.birds, 0);
    const written = countBirds(birds, observer, options.error, protocol, chance);
    return [{ candidates: first.candidates, written, named, slip: 0 }];
  });
}

/** The same with what the observer would have written but for slips: nothing of it is written. */
export function withoutSlips(sightings: readonly Sighting[]): Sighting[] {
  return sightings.map((sighting) => ({
    ...sighting,
    lines: sighting.lines.map((line) => ({
      ...line,
      slip: 0,
      written: { ...line.written, number: line.written.number - line.slip },
    })),
  }));
}
