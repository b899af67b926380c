import type { Wording } from '../../../server/core/model/saying.js';
import { FRENCH_CHECKS } from '../../../server/core/words/french-checks.js';
import { FRENCH_VALUES } from '../../../server/core/words/french-values.js';

/** Fetched with the French messages; what only the server says comes from it in French. */
export const FRENCH: Wording = { ...FRENCH_VALUES, templates: FRENCH_CHECKS };
