import { conditionalBinomialTest } from '../math/binomial-test.js';
import { zOfTwoSidedP } from '../math/normal.js';

/** Up to this many birds the exact test replaces the one on ln counts (method section 3.3). */
const SMALL = 20;

/**
 * How far apart two counts of the same birds are, in standard deviations, always 0 or more.
 *
 * Above 20 birds each: z = (ln a − ln b) / √(cvₐ² + cv_b²). Otherwise the exact conditional binomial
 * test (Przyborowski & Wilenski 1940, Biometrika 31:313), its two-sided p as a z. Counts above 20
 * that differ although neither has any counting error are infinitely far apart.
 *
 * @param cvA coefficient of variation of count `a` from known counting error
 */
export function countSpread(a: number, b: number, cvA: number, cvB: number): number {
  if (a === b) return 0;
  if (a <= SMALL || b <= SMALL) return Math.abs(zOfTwoSidedP(conditionalBinomialTest(a, b)));
  return Math.abs(Math.log(a) - Math.log(b)) / Math.sqrt(cvA ** 2 + cvB ** 2);
}
