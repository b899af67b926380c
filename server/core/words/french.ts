import { FRENCH_MARKS } from '../marks/french-marks.js';
import type { Wording } from '../model/saying.js';
import { commonName } from '../taxa/taxon-name.js';
import { FRENCH_CHECKS } from './french-checks.js';
import { FRENCH_DISAGREEMENTS } from './french-disagreements.js';
import { FRENCH_LINKS } from './french-links.js';
import { FRENCH_REFUSALS } from './french-refusals.js';
import { FRENCH_REVIEWS } from './french-reviews.js';
import { FRENCH_VALUES } from './french-values.js';

/** The sentences that are made with `say`, in French. */
export const FRENCH_SAYINGS: Readonly<Record<string, string>> = {
  ...FRENCH_CHECKS,
  ...FRENCH_REFUSALS,
  ...FRENCH_DISAGREEMENTS,
  ...FRENCH_LINKS,
  ...FRENCH_REVIEWS,
};

/** Everything that is said to people, in French; terms of the field marks among it. */
export const FRENCH: Wording = {
  ...FRENCH_VALUES,
  taxon: (candidates) => commonName(candidates, 'fr'),
  templates: { ...FRENCH_MARKS, ...FRENCH_SAYINGS },
};
