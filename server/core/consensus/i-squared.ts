import { sum } from '../math/sum.js';
import { studiesOf } from './studies.js';

/**
 * I²: the share of the spread between values that is not their own error, in per cent.
 *
 * Method: 100 (Q − (k − 1)) / Q, never under 0 (Higgins & Thompson 2002, Stat. Med. 21:1539).
 * Q = 0, where all values are the same, gives 0.
 *
 * @param q Cochran's Q of the values
 * @param count how many values, at least two
 * @throws RangeError for a negative Q or fewer than two values
 * @example iSquared(4, 3) // 50
 */
export function iSquared(q: number, count: number): number {
  if (!(q >= 0) || !(count >= 2)) {
    throw new RangeError(`iSquared requires Q of at least 0 and two values, not ${q} and ${count}`);
  }
  return q === 0 ? 0 : Math.max(0, (100 * (q - (count - 1))) / q);
}

/**
 * The same for any estimate of τ²: 100 τ² / (τ² + s²), where s² = (k − 1) Σw / ((Σw)² − Σw²) is the
 * typical error variance (Higgins & Thompson 2002). With the τ² of DerSimonian & Laird the two agree.
 *
 * @param tau2 variance between observers
 * @param variances known variances of the values, at least two, each over 0
 * @throws RangeError for fewer than two variances, or one that is not over 0
 * @example iSquaredOfTau2(1, [1, 1]) // 50
 */
export function iSquaredOfTau2(tau2: number, variances: readonly number[]): number {
  const studies = studiesOf('iSquaredOfTau2', variances, variances, 2);
  const weights = studies.map(({ weight }) => weight);
  const total = sum(weights);
  const typical =
    ((variances.length - 1) * total) / (total ** 2 - sum(weights.map((weight) => weight ** 2)));
  return (100 * tau2) / (tau2 + typical);
}
