import type { Wording } from '../../../server/core/model/saying.js';
import { FRENCH_CHECKS } from '../../../server/core/words/french-checks.js';
import { frenchNumber } from '../../../server/core/words/french-number.js';

/** Fetched with the French messages; what only the server says comes from it in French. */
export const FRENCH: Wording = { templates: FRENCH_CHECKS, number: frenchNumber };
