/**
 * European red mites on 150 apple leaves: leaves with 0, 1, 2 … mites.
 * Source: Bliss CI, Fisher RA (1953) Fitting the negative binomial distribution to biological data.
 * Biometrics 9:176-200. Data, and the published 1.1467 and 1.02459, from memory of the paper.
 * Expected: root of the likelihood equation in Python (scipy 1.10.1); agrees with the published k.
 */
export const MITES = {
  frequencies: [70, 38, 17, 10, 9, 3, 2, 1, 0],
  expected: { mean: 1.14666666667, size: 1.02459238679, logLikelihood: -222.437153598 },
} as const;
