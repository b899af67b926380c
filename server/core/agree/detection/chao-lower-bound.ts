import type { Interval } from '../../math/bootstrap.js';
import { unseenInterval } from './unseen-interval.js';

export interface LowerBound {
  /** How many were seen at least once. */
  readonly seen: number;
  readonly value: number;
  readonly variance: number;
  readonly standardError: number;
  /** Log-normal on the unseen. */
  readonly interval: Interval;
  /**
   * `classic`: f₁² / 2f₂. `bias-corrected`: f₁(f₁ − 1) / 2(f₂ + 1), taken where none was seen twice
   * or where asked for.
   */
  readonly form: 'classic' | 'bias-corrected';
}

/**
 * Least number there can have been where some are harder to see than others: Chao's lower bound from
 * how many were seen once and twice (Chao 1984, Scand. J. Stat. 11:265; 1987, Biometrics 43:783; with
 * variances of Chao 1987 and Colwell et al. 2012, J. Plant Ecol. 5:3).
 *
 * Purpose: flocks seen by three or more observers, whose chances of being seen differ, so that an
 * estimate which takes them as equal is too low. The same formula bounds species from individuals
 * (Chao1) or from incidences (Chao2) with their factor (n − 1)/n for a sample of n.
 *
 * @param frequencies how many were seen once, twice, and so on
 * @param samples n of the factor (n − 1)/n; infinity (default) leaves it out
 * @param form `classic` unless none was seen twice
 * @throws RangeError unless numbers are whole and at least 0
 * @example chaoLowerBound([43, 16, 8, 6, 0, 2, 1]).value // 133.78125
 */
export function chaoLowerBound(
  frequencies: readonly number[],
  samples = Infinity,
  form: LowerBound['form'] = 'classic',
  level = 0.95,
): LowerBound {
  if (!frequencies.every((each) => Number.isInteger(each) && each >= 0) || !(samples >= 1)) {
    throw new RangeError('chaoLowerBound requires whole numbers of at least 0');
  }
  const [once = 0, twice = 0] = frequencies;
  const seen = frequencies.reduce((total, each) => total + each, 0);
  const factor = samples === Infinity ? 1 : (samples - 1) / samples;
  const taken = twice === 0 ? 'bias-corrected' : form;
  const { unseen, variance } =
    taken === 'classic' ? classic(once, twice, factor) : corrected(once, twice, factor, seen);
  return {
    seen,
    value: seen + unseen,
    variance,
    standardError: Math.sqrt(variance),
    interval: unseenInterval(seen, unseen, variance, level),
    form: taken,
  };
}

function classic(once: number, twice: number, a: number): { unseen: number; variance: number } {
  const ratio = once / twice;
  return {
    unseen: (a * once ** 2) / (2 * twice),
    variance: twice * ((a / 2) * ratio ** 2 + a ** 2 * ratio ** 3 + (a ** 2 / 4) * ratio ** 4),
  };
}

function corrected(
  once: number,
  twice: number,
  a: number,
  seen: number,
): { unseen: number; variance: number } {
  const pairs = once * (once - 1);
  const unseen = (a * pairs) / (2 * (twice + 1));
  if (twice > 0) {
    return {
      unseen,
      variance:
        unseen +
        (a ** 2 * once * (2 * once - 1) ** 2) / (4 * (twice + 1) ** 2) +
        (a ** 2 * once ** 2 * twice * (once - 1) ** 2) / (4 * (twice + 1) ** 4),
    };
  }
  const bound = seen + unseen;
  const variance =
    unseen +
    (a ** 2 * once * (2 * once - 1) ** 2) / 4 -
    (bound > 0 ? (a ** 2 * once ** 4) / (4 * bound) : 0);
  return { unseen, variance: Math.max(0, variance) };
}
