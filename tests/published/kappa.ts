/**
 * Source: Fleiss JL, Cohen J, Everitt BS (1969) Psychol Bull 72:323-327, example (n = 200); table and
 * weights as in the help of the R package psych (cohen.kappa).
 * Expected: the Fleiss-Cohen-Everitt formulas in Python; the unweighted standard error agrees with
 * the R package vcd. (psych 2.2.9 prints .0524 for the weighted standard error, against the formula.)
 */
export const FLEISS_COHEN_EVERITT = {
  table: [
    [106, 10, 4],
    [22, 28, 10],
    [2, 12, 6],
  ],
  weights: [
    [1, 0, 0.4444],
    [0, 1, 0.6667],
    [0.4444, 0.6667, 1],
  ],
  expected: {
    kappa: 0.428571428571,
    se_kappa: 0.0537110048692,
    weighted_kappa: 0.507069964867,
    se_weighted_kappa_fleiss_cohen_everitt: 0.0569938847033,
    kappa_ci95: [0.323299793454, 0.533843063688],
    weighted_kappa_ci95: [0.395364003509, 0.618775926224],
    /** With weights 1 − |i − j| / 2, by vcd. */
    linear_kappa: 0.492307692308,
    se_linear_kappa: 0.0507186076077,
  },
} as const;

/**
 * Source: Cohen J (1968) Psychol Bull 70:213-220 (proportions of 200); he reports .492 and .348, as
 * quoted in the help of the R package psych. Expected: computed with psych 2.2.9, re-derived in Python.
 */
export const COHEN_1968 = {
  proportions: [
    [0.44, 0.07, 0.09],
    [0.05, 0.2, 0.05],
    [0.01, 0.03, 0.06],
  ],
  n: 200,
  disagreementWeights: [
    [0, 1, 3],
    [1, 0, 6],
    [3, 6, 0],
  ],
  expected: { kappa: 0.491525423729, weighted_kappa: 0.347826086957 },
} as const;

/**
 * 291 salmon kidney samples, two laboratories.
 * Source: Dohoo, Martin, Stryhn (2010) Veterinary Epidemiologic Research 2nd ed, pp 98-99; R package
 * epiR, epi.kappa example 1, whose help quotes kappa 0.67 with interval 0.56 to 0.79.
 * Expected: computed with epiR 2.0.57 (method "fleiss": the null standard error is not used here;
 * the interval of method "watson" is that of Cohen 1960).
 */
export const SALMON = {
  table: [
    [19, 10],
    [6, 256],
  ],
  expected: {
    kappa: 0.673583847448,
    observed: 0.945017182131,
    expectedByChance: 0.831556075153,
    prevalenceIndex: -0.814432989691,
    biasIndex: 0.0137457044674,
    pabak: { est: 0.890034364261, lower: 0.82449061552, upper: 0.936499137675 },
  },
} as const;
