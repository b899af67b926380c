import { FRENCH_MARKS } from '../../../server/core/marks/french-marks.js';
import type { Wording } from '../../../server/core/model/saying.js';
import { commonName } from '../../../server/core/taxa/taxon-name.js';
import { FRENCH_CHECKS } from '../../../server/core/words/french-checks.js';
import { FRENCH_VALUES } from '../../../server/core/words/french-values.js';

/** Checks and texts of the field marks; what only the server says comes from it in French. */
export const FRENCH: Wording = {
  ...FRENCH_VALUES,
  taxon: (candidates) => commonName(candidates, 'fr'),
  templates: { ...FRENCH_MARKS, ...FRENCH_CHECKS },
};
