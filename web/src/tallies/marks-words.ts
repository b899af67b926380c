import { type FieldMark, type MarkState } from '../../../server/core/marks/field-mark-key.js';
import type { SeenMark, WeighedMarks } from '../../../server/core/marks/weigh-marks.js';
import type { Species } from '../../../server/core/model/snapshot.js';
import { commonName } from '../ui/taxon.js';
import { listed } from '../ui/words.js';

/** `bill blue-grey with a broad black tip fits Redhead, Ring-necked Duck (female, when the band is faint)`. */
export function seenMarkWords({ mark, state }: SeenMark): string {
  return `${mark.name} ${state.name} fits ${fitWords(mark, state)}`;
}

/** The species that have a state, with sex and when, where not always. */
export function fitWords(mark: FieldMark, state: MarkState): string {
  const fits = new Map<Species, string[]>();
  for (const fit of state.fits) {
    const species = typeof fit === 'string' ? fit : fit.species;
    const limits =
      typeof fit === 'string'
        ? []
        : [mark.plumage === 'either' ? fit.plumage : undefined, fit.when].filter(
            (one) => one !== undefined,
          );
    fits.set(species, [...(fits.get(species) ?? []), limits.join(', ')]);
  }
  return [...fits]
    .map(([species, limits]) => {
      const words = limits.includes('') ? '' : ` (${limits.join('; ')})`;
      return `${commonName([species])}${words}`;
    })
    .join(', ');
}

/** What all the marks together leave, in one sentence. */
export function outcomeWords(named: readonly Species[], weighed: WeighedMarks): string {
  const { outcome, supported, undependable } = weighed;
  const name = commonName(named);
  const others = supported.filter((species) => !named.includes(species));
  switch (outcome) {
    case 'not-documented':
      return undependable.length === 0
        ? 'Tick what you saw; what you did not see stays open. A line without marks is fine too.'
        : 'These marks mislead too often to decide anything alone. They are kept with the line.';
    case 'supported':
      return named.join() === supported.join()
        ? `The marks fit ${name}.`
        : `The marks fit ${name}; of it they leave ${commonName(supported)}.`;
    case 'coarser':
      return `The marks fit ${listed(others.map((species) => commonName([species])))} as well as ${name}.`;
    case 'contradicted':
      return supported.length === 0
        ? 'No bird of the group has all of these marks: one of them may have misled, or two kinds were seen.'
        : `The marks fit ${commonName(supported)}, and not ${name}.`;
  }
}
