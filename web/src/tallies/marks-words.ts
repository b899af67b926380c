import { t } from '@lingui/core/macro';
import { type FieldMark, type MarkState } from '../../../server/core/marks/field-mark-key.js';
import type { SeenMark, WeighedMarks } from '../../../server/core/marks/weigh-marks.js';
import type { Species } from '../../../server/core/model/snapshot.js';
import { wording } from '../ui/language.js';
import { commonName } from '../ui/taxon.js';
import { listed } from '../ui/words.js';

/** A text of a field-mark key in the language of the pages (`marks/french-marks.ts`); what is stored is the key's own. */
export function markText(text: string): string {
  return wording().templates[text] ?? text;
}

/** `bill blue-grey with a broad black tip fits Redhead, Ring-necked Duck (female, when the band is faint)`. */
export function seenMarkWords({ mark, state }: SeenMark): string {
  const seen = `${markText(mark.name)} ${markText(state.name)}`;
  const species = fitWords(mark, state);
  return t`${seen} fits ${species}`;
}

/** The species that have a state, with sex and when, where not always. */
export function fitWords(mark: FieldMark, state: MarkState): string {
  const fits = new Map<Species, string[]>();
  for (const fit of state.fits) {
    const species = typeof fit === 'string' ? fit : fit.species;
    const limits =
      typeof fit === 'string'
        ? []
        : [mark.plumage === 'either' ? fit.plumage : undefined, fit.when].flatMap((one) =>
            one === undefined ? [] : markText(one),
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
  const left = commonName(supported);
  const others = supported.filter((species) => !named.includes(species));
  const besides = listed(others.map((species) => commonName([species])));
  switch (outcome) {
    case 'not-documented':
      return undependable.length === 0
        ? t`Tick what you saw; what you did not see stays open. A line without marks is fine too.`
        : t`These marks mislead too often to decide anything alone. They are kept with the line.`;
    case 'supported':
      return named.join() === supported.join()
        ? t`The marks fit ${name}.`
        : t`The marks fit ${name}; of it they leave ${left}.`;
    case 'coarser':
      return t`The marks fit ${besides} as well as ${name}.`;
    case 'contradicted':
      return supported.length === 0
        ? t`No bird of the group has all of these marks: one of them may have misled, or two kinds were seen.`
        : t`The marks fit ${left}, and not ${name}.`;
  }
}
