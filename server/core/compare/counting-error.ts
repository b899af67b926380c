import type { Protocol } from '../model/protocol.js';
import { numberOf } from '../model/quantity.js';
import type { Method, TallyLine } from '../model/snapshot.js';

/**
 * The relative error (coefficient of variation) of a count of so many birds by a method.
 *
 * @param number whole birds, 0 or more. A stated zero has no error: nothing was there to miscount.
 * @returns 0 for an error-free count; 0.2 means a standard deviation of a fifth of the number.
 * Source: the protocol's table; its defaults are Kersten, Rappoldt & Smit 1981 (Limosa 54:37) for
 * blocks, common practice for the rest.
 */
export function countingErrorOf(number: number, method: Method, protocol: Protocol): number {
  if (number === 0) return 0;
  for (const step of protocol.countingError[method]) {
    if (step.upTo === null || number <= step.upTo) return step.cv;
  }
  return 0;
}

/** The standard deviation of ln(count) that goes with a coefficient of variation: √ln(1 + cv²). */
export function logDeviation(cv: number): number {
  return Math.sqrt(Math.log1p(cv * cv));
}

/**
 * Variance of a line's number, in birds squared. A stated range is taken as a 95 % span where it
 * says more than the method does (range / (2 · 1.96), common practice, no source). A proportion sample
 * with scan samples has the error that they tell.
 */
export function varianceOf(line: TallyLine, protocol: Protocol): number {
  const number = numberOf(line.quantity);
  if (number === null) return 0;
  const byMethod = number * (line.sampleError ?? countingErrorOf(number, line.method, protocol));
  const { quantity } = line;
  const byRange =
    quantity.kind === 'range' || quantity.kind === 'exact-with-range'
      ? (quantity.high - quantity.low) / (2 * 1.96)
      : 0;
  return Math.max(byMethod, byRange) ** 2;
}
