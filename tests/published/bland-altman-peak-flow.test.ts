/*
 * Peak expiratory flow by two meters, first readings of 17 people.
 * Source: Bland JM, Altman DG (1986) Lancet i:307-310, Table 1 and text: mean -2.1, SD 38.8, limits
 * -79.7 and 75.5, intervals -22.0 to 17.8, -114.3 to -45.1, 40.9 to 110.1 (from memory; the paper rounds
 * on the way). Standard error of a limit as in Bland & Altman (1999) Stat Methods Med Res 8:135-160.
 * Expected: base formulas in R 4.2.2 on the published data; mean, SD and limits re-derived in Python.
 */
import { expect, it } from 'vitest';
import { limitsOfAgreement } from '../../server/core/agree/bland-altman.js';
import { normalCdf } from '../../server/core/math/normal.js';
import { studentTQuantile } from '../../server/core/math/student-t.js';
import { expectRelative } from '../support/expect-relative.js';
import { MINI_WRIGHT, WRIGHT } from './peak-flow.js';

const EXPECTED = [
  {
    n: 17,
    mean_difference: -2.11764705882,
    sd_difference: 38.7651298736,
    se_mean: 9.40192500351,
    t_quantile: 2.11990529922,
    mean_ci95: [-22.0488376966, 17.813543579],
    multiplier: 2,
    lower_limit: -79.647906806,
    upper_limit: 75.4126126884,
    se_limit_approx_sqrt_3s2_over_n: 16.284611795,
    lower_limit_ci95_approx: [-114.169741646, -45.126071966],
    upper_limit_ci95_approx: [40.8907778483, 109.934447528],
    se_limit_1999: 16.6204123155,
    lower_limit_ci95_1999: [-114.881606949, -44.4142066632],
    upper_limit_ci95_1999: [40.1789125456, 110.646312831],
  },
  {
    n: 17,
    mean_difference: -2.11764705882,
    sd_difference: 38.7651298736,
    se_mean: 9.40192500351,
    t_quantile: 2.11990529922,
    mean_ci95: [-22.0488376966, 17.813543579],
    multiplier: 1.96,
    lower_limit: -78.0973016111,
    upper_limit: 73.8620074934,
    se_limit_approx_sqrt_3s2_over_n: 16.284611795,
    lower_limit_ci95_approx: [-112.619136451, -43.575466771],
    upper_limit_ci95_approx: [39.3401726534, 108.383842333],
    se_limit_1999: 16.3951079847,
    lower_limit_ci95_1999: [-112.853377909, -43.341225313],
    upper_limit_ci95_1999: [39.1059311953, 108.618083792],
  },
];

it.each(EXPECTED)('limits at $multiplier standard deviations', (expected) => {
  // The share of a normal distribution that so many standard deviations hold.
  const share = 2 * normalCdf(expected.multiplier) - 1;
  const found = limitsOfAgreement(WRIGHT, MINI_WRIGHT, share);
  expect(found.n).toBe(expected.n);
  expectRelative(found.meanDifference.value, expected.mean_difference, 1e-9);
  expectRelative(found.standardDeviation, expected.sd_difference, 1e-9);
  expectRelative(found.meanDifference.low, expected.mean_ci95[0] ?? NaN, 1e-9);
  expectRelative(found.meanDifference.high, expected.mean_ci95[1] ?? NaN, 1e-9);
  expectRelative(found.lower.value, expected.lower_limit, 1e-9);
  expectRelative(found.upper.value, expected.upper_limit, 1e-9);
  expectRelative(found.standardErrorOfLimit, expected.se_limit_1999, 1e-9);
  const reach = studentTQuantile(0.975, expected.n - 1) * found.standardErrorOfLimit;
  expectRelative(found.lower.value - reach, expected.lower_limit_ci95_1999[0] ?? NaN, 1e-9);
  expectRelative(found.upper.value + reach, expected.upper_limit_ci95_1999[1] ?? NaN, 1e-9);
});
