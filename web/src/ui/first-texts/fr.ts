import { messages as people } from '../../people/messages/fr.po';
import { messages as plans } from '../../plans/messages/fr.po';
import { messages as tallies } from '../../tallies/messages/fr.po';
import { FRENCH_MARKS } from '../../../../server/core/marks/french-marks.js';
import type { Wording } from '../../../../server/core/model/saying.js';
import { FRENCH_CHECKS } from '../../../../server/core/words/french-checks.js';
import { FRENCH_VALUES } from '../../../../server/core/words/french-values.js';
import { commonName } from '../../../../server/core/taxa/taxon-name.js';
import { messages as ui } from '../messages/fr.po';

/** Field marks are data of the core, which is in English; their French is looked up by the English. */
export const messages = { ...ui, ...people, ...plans, ...tallies, ...FRENCH_MARKS };
/** What only the server says comes from it in French. */
export const wording: Wording = {
  ...FRENCH_VALUES,
  taxon: (candidates) => commonName(candidates, 'fr'),
  templates: FRENCH_CHECKS,
};
