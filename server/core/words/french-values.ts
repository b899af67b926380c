import type { Wording } from '../model/saying.js';
import { frenchDigits, frenchNumber } from './french-number.js';

/** How French writes the numbers that stand in the places of sentences. */
export const FRENCH_VALUES: Pick<Wording, 'number' | 'birds' | 'tenths'> = {
  number: frenchNumber,
  birds: frenchNumber,
  tenths: (value) => frenchDigits(value.toFixed(1)),
};
