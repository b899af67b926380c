/**
 * 10 subjects, 5 categories, 14 raters.
 * Source: widely printed worked example of Fleiss' kappa; data from memory (column sums and shares
 * agree with the printed ones); method Fleiss (1971) Psychol Bull 76:378-382.
 * Expected: computed with the R package irr 0.84.1, kappa re-derived in Python. Printed 0.210.
 */
export const TEN_SUBJECTS = {
  counts: [
    [0, 0, 0, 0, 14],
    [0, 2, 6, 4, 2],
    [0, 0, 3, 5, 6],
    [0, 3, 9, 2, 0],
    [2, 2, 8, 1, 1],
    [7, 7, 0, 0, 0],
    [3, 2, 6, 3, 0],
    [2, 5, 3, 2, 2],
    [6, 5, 2, 1, 0],
    [0, 2, 2, 3, 7],
  ],
  kappa: 0.209930704422,
  standardErrorIfNone: 0.0169650692244,
  z: 12.3742910592,
  observed: 0.378021978022,
  expected: 0.212755102041,
  byName: [0.201282051282, 0.0796703296703, 0.171597633136, 0.0303813833226, 0.507656695157],
} as const;

/**
 * 4 observers, 12 units, gaps as null.
 * Source: Krippendorff K (2011) Computing Krippendorff's Alpha-Reliability, sections D and E; the
 * example of irr kripp.alpha. Printed .743 .815 .849 .797 (from memory).
 * Expected: computed with the R package irr 0.84.1, all metrics re-derived in Python.
 */
export const FOUR_OBSERVERS = {
  observers: [
    [1, 2, 3, 3, 2, 1, 4, 1, 2, null, null, null],
    [1, 2, 3, 3, 2, 2, 4, 1, 2, 5, null, null],
    [null, 3, 3, 3, 2, 3, 4, 2, 2, 5, 1, 3],
    [1, 2, 3, 3, 2, 4, 4, 1, 2, 5, 1, null],
  ],
  alpha: {
    nominal: 0.743421052632,
    ordinal: 0.815387503755,
    interval: 0.849107142857,
    ratio: 0.797402774712,
  },
} as const;
