import { sum } from '../math/sum.js';
import { cochranQ } from './cochran-q.js';
import { studiesOf } from './studies.js';

/**
 * Variance between observers by the moments of DerSimonian & Laird (1986, Control. Clin. Trials
 * 7:177): (Q − (k − 1)) / (Σw − Σw²/Σw), never under 0.
 *
 * @param values ln counts, at least two
 * @param variances their known variances, each over 0
 * @throws RangeError as `studiesOf` says
 * @example derSimonianLairdTau2([1, 3], [1, 1]) // 1
 */
export function derSimonianLairdTau2(
  values: readonly number[],
  variances: readonly number[],
): number {
  const studies = studiesOf('derSimonianLairdTau2', values, variances, 2);
  const weights = studies.map(({ weight }) => weight);
  const total = sum(weights);
  const scale = total - sum(weights.map((weight) => weight ** 2)) / total;
  return Math.max(0, (cochranQ(values, variances) - (values.length - 1)) / scale);
}
