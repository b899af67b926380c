import type { Wording } from '../model/saying.js';
import { commonName } from '../taxa/taxon-name.js';
import { frenchDigits, frenchNumber } from './french-number.js';

/** How French writes what stands in the places of sentences. */
export const FRENCH_VALUES: Omit<Wording, 'templates'> = {
  number: frenchNumber,
  birds: frenchNumber,
  tenths: (value) => frenchDigits(value.toFixed(1)),
  taxon: (candidates) => commonName(candidates, 'fr'),
};
