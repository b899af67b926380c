/**
 * Peak expiratory flow by two meters, first readings of 17 people.
 * Source: Bland JM, Altman DG (1986) Lancet i:307-310, Table 1.
 */
export const WRIGHT = [
  494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427,
];
export const MINI_WRIGHT = [
  512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451,
];

/**
 * Lin's concordance of the two. Method: Lin LI (1989) Biometrics 45:255-268, corrected Biometrics
 * 2000;56:324-325. Expected: computed with the R package epiR 2.0.57 (epi.ccc, example 2), estimate
 * and both intervals re-derived in Python.
 */
export const PEAK_FLOW_CONCORDANCE = {
  rho_c: 0.942742431427,
  z_transform_ci95: [0.850491873169, 0.97872627917],
  bias_correction_Cb: 0.999430693136,
  pearson_r: 0.943279446891,
  se_asymptotic: 0.0286167374606,
  asymptotic_ci95: [0.88665465665, 0.998830206205],
  se_z: 0.25725983786,
  scale_shift: 0.972509121336,
  location_shift: 0.0190302500916,
} as const;

/**
 * Differences Wright less mini Wright. Expected: base formulas in R 4.2.2, re-derived in Python, with
 * the multiplier 1.96; the 1986 text prints mean -2.1, SD 38.8 (from memory). The exact intervals of
 * the limits were computed with scipy 1.17.1 (nct.ppf with 16 degrees of freedom); no publication.
 */
export const PEAK_FLOW_LIMITS = {
  mean_difference: -2.11764705882,
  sd_difference: 38.7651298736,
  mean_ci95: [-22.0488376966, 17.813543579],
  lower_limit: -78.0973016111,
  upper_limit: 73.8620074934,
  lower_limit_ci95_1999: [-112.853377909, -43.341225313],
  exact_lower_limit_ci95: [-124.160798294676, -53.0949314166675],
  exact_upper_limit_ci95: [48.8596372990204, 119.925504177029],
  upper_limit_ci95_1999: [39.1059311953, 108.618083792],
} as const;
