import type { Wording } from '../../../server/core/model/saying.js';
import { FRENCH_CHECKS } from '../../../server/core/words/french-checks.js';
import { FRENCH_VALUES } from '../../../server/core/words/french-values.js';

/**
 * Fetched with the French messages; what only the server says comes from it in French. It must use
 * nothing that the first page is made of: that waits for the language before it is there.
 */
export const FRENCH: Omit<Wording, 'taxon'> = { ...FRENCH_VALUES, templates: FRENCH_CHECKS };
