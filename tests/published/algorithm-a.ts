/**
 * Cell means of 9 laboratories, creosote.
 * Source: ISO 5725-5:1998, creosote example; data as in the help of the R package metRology (algA).
 * Expected: own formulas in R 4.2.2 with the standard's factor 1.134, iterated to 1e-13, re-derived
 * in Python. The iterate printed in the standard was not available.
 */
export const CREOSOTE = {
  x: [24.14, 20.155, 19.5, 20.3, 20.705, 17.57, 20.1, 20.94, 21.185],
  mean: 20.4121428571,
  standardDeviation: 1.06983970296,
} as const;

/**
 * Nickel in syenite, ppm, 31 values.
 * Source: Analytical Methods Committee (1989) Analyst 114:1693-1702; R data MASS::abbey.
 * Expected: own formulas in R with the factor 1.134, re-derived in Python; MASS 7.3.58.2 hubers,
 * with the exact factor 1.13339, gives 11.7315 and 5.2585.
 */
export const ABBEY = {
  x: [
    5.2, 6.5, 6.9, 7, 7, 7, 7.4, 8, 8, 8, 8, 8.5, 9, 9, 10, 11, 11, 12, 12, 13.7, 14, 14, 14, 16,
    17, 17, 18, 24, 28, 34, 125,
  ],
  mean: 11.7326407581,
  standardDeviation: 5.26355007825,
  standardError_exact_factor: 1.18170187692,
} as const;
