/*
 * Source: Newcombe RG (1998) Stat Med 17:857-872, Table I (printed to four decimals, from memory,
 * agree); Brown LD, Cai TT, DasGupta A (2001) Stat Sci 16:101-133 (Jeffreys).
 * Expected: computed with R 4.2.2 (prop.test, binom.test, qbeta, uniroot), re-derived with statsmodels
 * but for mid-P.
 */
import { expect, it } from 'vitest';
import * as intervals from '../../server/core/agree/proportion-interval.js';

const ROWS = [
  {
    x: 81,
    n: 263,
    conf: 0.95,
    wilson: [0.255288519878, 0.366209576983],
    wilson_cc_newcombe: [0.253508682295, 0.368176201043],
    clopper_pearson: [0.252736745585, 0.367621922601],
    mid_p: [0.254402104946, 0.365773474258],
    jeffreys_equal_tailed: [0.254521934991, 0.365647499174],
    agresti_coull: [0.25522066519, 0.366277431671],
  },
  {
    x: 0,
    n: 20,
    conf: 0.95,
    wilson: [0, 0.161125158053],
    wilson_cc_newcombe: [0, 0.200453345013],
    clopper_pearson: [0, 0.168433470983],
    mid_p: [0, 0.139108340668],
    jeffreys_equal_tailed: [0, 0.116638982905],
    agresti_coull: [-0.0286844024897, 0.189809560542],
  },
];
const METHODS = [
  ['wilson', intervals.wilsonInterval],
  ['wilson_cc_newcombe', intervals.correctedWilsonInterval],
  ['clopper_pearson', intervals.clopperPearsonInterval],
  ['mid_p', intervals.midPInterval],
  ['jeffreys_equal_tailed', intervals.jeffreysInterval],
  ['agresti_coull', intervals.agrestiCoullInterval],
] as const;

it.each(METHODS)('%s', (method, intervalOf) => {
  for (const row of ROWS) {
    const found = intervalOf(row.x, row.n, row.conf);
    expect(found.low).toBeCloseTo(row[method][0] ?? NaN, 8);
    expect(found.high).toBeCloseTo(row[method][1] ?? NaN, 8);
    // The other kind is what is left.
    const other = intervalOf(row.n - row.x, row.n, row.conf);
    expect(other.low).toBeCloseTo(1 - found.high, 8);
    expect(other.high).toBeCloseTo(1 - found.low, 8);
  }
});
