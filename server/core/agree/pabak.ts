import { chiSquaredUpperTail } from '../math/chi-squared.js';
import { percentAgreement } from './percent-agreement.js';
import { clopperPearsonInterval } from './proportion-interval.js';

export interface Pabak {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly n: number;
}

/**
 * Prevalence- and bias-adjusted kappa (Byrt, Bishop & Carlin 1993, J. Clin. Epidemiol. 46:423):
 * kappa as it would be if all names were as common as each other, (k p_o − 1)/(k − 1).
 *
 * Purpose: beside kappa where one taxon makes up nearly all birds and kappa is low for that reason
 * alone. The interval is that of Clopper & Pearson for the share named the same, transformed; things
 * named are taken as independent.
 *
 * @param table rows: what the first named; columns: what the second did; two names or more
 * @throws RangeError for fewer than two names, or an empty table
 * @example pabak([[20, 5], [10, 15]]).value // 0.4
 */
export function pabak(table: readonly (readonly number[])[], level = 0.95): Pabak {
  const names = table.length;
  const n = table.flat().reduce((total, count) => total + count, 0);
  const observed = percentAgreement(table);
  if (names < 2 || observed === null) {
    throw new RangeError(`pabak requires two names and one thing named, not ${names} and ${n}`);
  }
  const adjust = (share: number): number => (names * share - 1) / (names - 1);
  const { low, high } = clopperPearsonInterval(observed * n, n, level);
  return { value: adjust(observed), low: adjust(low), high: adjust(high), n };
}

export interface TwoByTwo {
  /** (both yes − both no) / n: far from 0, kappa is low for that reason alone. */
  readonly prevalenceIndex: number;
  /** How much more often the first said yes than the second. */
  readonly biasIndex: number;
  /** McNemar's (1947) chi-squared for bias, one degree of freedom; `null` where all agree. */
  readonly mcNemar: { readonly chiSquared: number; readonly p: number } | null;
}

/**
 * Why a kappa of yes and no may mislead: prevalence and bias indices of Byrt, Bishop & Carlin (1993),
 * and McNemar's test of bias (1947, Psychometrika 12:153), without continuity correction.
 *
 * @param table [[both yes, only the first], [only the second, both no]]
 * @throws RangeError for an empty table
 * @example prevalenceAndBias([[20, 5], [10, 15]]).biasIndex // -0.1
 */
export function prevalenceAndBias(
  table: readonly [readonly [number, number], readonly [number, number]],
): TwoByTwo {
  const [[bothYes, onlyFirst], [onlySecond, bothNo]] = table;
  const n = bothYes + onlyFirst + onlySecond + bothNo;
  if (!(n > 0)) throw new RangeError('prevalenceAndBias requires one thing that both named');
  const apart = onlyFirst + onlySecond;
  const chiSquared = (onlyFirst - onlySecond) ** 2 / apart;
  return {
    prevalenceIndex: (bothYes - bothNo) / n,
    biasIndex: (onlyFirst - onlySecond) / n,
    mcNemar: apart === 0 ? null : { chiSquared, p: chiSquaredUpperTail(chiSquared, 1) },
  };
}
