import { sum } from '../math/sum.js';

/** A value with its known variance and the weight that these give it. */
export interface Study {
  readonly value: number;
  readonly variance: number;
  /** 1 / (variance + τ²). */
  readonly weight: number;
}

/**
 * Puts values, variances and weights side by side, and refuses what no weighted mean can be taken
 * of. A variance of 0 has no finite weight: give a count without counting error a floor first (the
 * error of half a bird, say).
 *
 * @param name of the asking function, for the message
 * @param fewest values that it needs
 * @throws RangeError unless both lists have the same length, at least `fewest`, and every variance
 * is over 0
 */
export function studiesOf(
  name: string,
  values: readonly number[],
  variances: readonly number[],
  fewest: number,
  tau2: number = 0,
): Study[] {
  if (values.length !== variances.length) {
    throw new RangeError(
      `${name} requires one variance for each value, not ${variances.length} for ${values.length}`,
    );
  }
  if (values.length < fewest) {
    throw new RangeError(`${name} requires at least ${fewest} values, not ${values.length}`);
  }
  return values.map((value, index) => {
    const variance = variances[index] ?? NaN;
    if (!Number.isFinite(value) || !(variance > 0 && variance < Infinity)) {
      throw new RangeError(`${name} requires finite values and variances over 0`);
    }
    return { value, variance, weight: 1 / (variance + tau2) };
  });
}

/** Mean of the studies by their weights; of one study, its value. */
export function weightedMean(studies: readonly Study[]): number {
  return (
    sum(studies.map(({ value, weight }) => value * weight)) /
    sum(studies.map(({ weight }) => weight))
  );
}
