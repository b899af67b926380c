import type { Wording } from '../model/saying.js';
import { FRENCH_CHECKS } from './french-checks.js';
import { frenchNumber } from './french-number.js';
import { FRENCH_REFUSALS } from './french-refusals.js';

/** Everything that is said to people, in French. */
export const FRENCH: Wording = {
  templates: { ...FRENCH_CHECKS, ...FRENCH_REFUSALS },
  number: frenchNumber,
};
