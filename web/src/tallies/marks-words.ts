import { type FieldMark, type MarkState } from '../../../server/core/marks/field-mark-key.js';
import type { SeenMark, WeighedMarks } from '../../../server/core/marks/weigh-marks.js';
import type { Species } from '../../../server/core/model/snapshot.js';
import { englishName } from '../../../server/core/taxa/taxon-name.js';
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
      return `${englishName([species])}${words}`;
    })
    .join(', ');
}

/** What all the marks together leave, in one sentence. */
export function outcomeWords(named: readonly Species[], weighed: WeighedMarks): string {
  const { outcome, supported, undependable } = weighed;
  const name = englishName(named);
  const others = supported.filter((species) => !named.includes(species));
  switch (outcome) {
    case 'not-documented':
      return undependable.length === 0
        ? 'Tick what you saw; what you did not see stays open. A line without marks is fine too.'
        : 'These marks mislead too often to decide anything alone. They are kept with the line.';
    case 'supported':
      return named.join() === supported.join()
        ? `The marks fit ${name}.`
        : `The marks fit ${name}; of it they leave ${englishName(supported)}.`;
    case 'coarser':
      return `The marks fit ${listed(others.map((species) => englishName([species])))} as well as ${name}.`;
    case 'contradicted':
      return supported.length === 0
        ? 'No bird of the group has all of these marks: one of them may have misled, or two kinds were seen.'
        : `The marks fit ${englishName(supported)}, and not ${name}.`;
  }
}
