import type { FoundLink } from '../../server/core/link/find-links.js';
import type { FlockSighting } from '../../server/core/link/sightings.js';
import type { JudgedTrueLink } from '../../server/core/score/judge-links.js';

/** What became of a true link, from the engine's last step back to its first. */
export const FATES = [
  'proposed',
  'shown',
  'not shown',
  'other flock',
  'mixed up',
  'not followed',
] as const;
export type Fate = (typeof FATES)[number];

export const FATE_WORDS: Readonly<Record<Fate, string>> = {
  proposed: 'proposed',
  shown: 'under the threshold',
  'not shown': 'no link',
  'other flock': 'linked elsewhere',
  'mixed up': 'sighting mixed up',
  'not followed': 'not followed',
};

export interface Loss extends Pick<JudgedTrueLink, 'kind' | 'birds'> {
  readonly fate: Fate;
}

/** Where each true link was lost. */
export function lossesOf(
  trueLinks: readonly JudgedTrueLink[],
  links: readonly FoundLink[],
  sightings: readonly FlockSighting[],
): Loss[] {
  const sightingOf = new Map(
    sightings.flatMap((sighting) => sighting.sighting.lines.map((id) => [id, sighting] as const)),
  );
  const proposedLines = new Set(
    links.filter(({ proposed }) => proposed).flatMap(({ lines }) => lines),
  );
  return trueLinks.map(({ kind, birds, lines, probability, proposed }) => {
    const fateOf = (): Fate => {
      if (proposed) return 'proposed';
      if (probability !== null) return 'shown';
      const inPlaces = lines.map((ids) => new Set(ids.flatMap((id) => sightingOf.get(id) ?? [])));
      if (inPlaces.some((some) => some.size === 0)) return 'not followed';
      const strange = inPlaces.some((some, place) =>
        [...some].some((each) => each.sighting.lines.some((id) => !lines[place]?.includes(id))),
      );
      if (strange) return 'mixed up';
      return lines.flat().some((id) => proposedLines.has(id)) ? 'other flock' : 'not shown';
    };
    return { kind, birds, fate: fateOf() };
  });
}
