import type { Quantity } from './snapshot.js';

/**
 * The one number that stands for a quantity: the number itself, the rounded middle of a range,
 * or `null` for birds that were seen but not counted.
 */
export function numberOf(quantity: Quantity): number | null {
  switch (quantity.kind) {
    case 'exact':
    case 'exact-with-range':
      return quantity.number;
    case 'range':
      return Math.round((quantity.low + quantity.high) / 2);
    case 'present':
      return null;
  }
}
