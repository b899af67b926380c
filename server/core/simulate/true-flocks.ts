import type { TrueFlock } from '../score/truth.js';
import type { Flock } from './population.js';
import { linesOf, type TurnRecord } from './turn-record.js';

/** Every flock with its birds, each species with the lines that some of them were written down in. */
export function trueFlocks(
  flocks: readonly Flock[],
  records: readonly TurnRecord[],
): readonly TrueFlock[] {
  const inSight = new Set(
    records.flatMap(({ sections, sightings }) =>
      sightings
        .filter(({ section }) => sections.includes(section))
        .flatMap(({ members }) => members.map(({ number }) => number)),
    ),
  );
  const byPart = new Map<string, Set<string>>();
  for (const { id, line, sighting } of records.flatMap(linesOf)) {
    for (const { number } of sighting.members) {
      for (const { species } of line.named) {
        const key = `${number} ${species}`;
        byPart.set(key, (byPart.get(key) ?? new Set()).add(id));
      }
    }
  }
  return flocks.map(({ number, parts }) => ({
    inSight: inSight.has(number),
    parts: parts.map(({ species, birds }) => ({
      species,
      birds,
      lines: [...(byPart.get(`${number} ${species}`) ?? [])].sort(),
    })),
  }));
}
