import { messages as people } from '../../people/messages/fr.po';
import { messages as plans } from '../../plans/messages/fr.po';
import { messages as tallies } from '../../tallies/messages/fr.po';
import { FRENCH_MARKS } from '../../../../server/core/marks/french-marks.js';
import type { Wording } from '../../../../server/core/model/saying.js';
import { FRENCH_CHECKS } from '../../../../server/core/words/french-checks.js';
import { FRENCH_VALUES } from '../../../../server/core/words/french-values.js';
import { commonName } from '../../../../server/core/taxa/taxon-name.js';
import { messages as ui } from '../messages/fr.po';

export const messages = { ...ui, ...people, ...plans, ...tallies };
/** With the texts of the field marks; what only the server says comes from it in French. */
export const wording: Wording = {
  ...FRENCH_VALUES,
  taxon: (candidates) => commonName(candidates, 'fr'),
  templates: { ...FRENCH_MARKS, ...FRENCH_CHECKS },
};
