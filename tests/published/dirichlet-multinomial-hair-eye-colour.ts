/**
 * Eye colour (columns brown, blue, hazel, green) of students by hair colour and sex (rows).
 * Source: R data HairEyeColor; Snee RD (1974) Am Stat 28:9-12.
 * Expected: computed with scipy 1.10.1 on an own likelihood; the R package VGAM 1.1.7 agrees to about
 * 1e-5. No publication of the fit.
 */
export const HAIR_EYE_COLOUR = {
  counts: [
    [32, 11, 10, 3],
    [53, 50, 25, 15],
    [10, 10, 7, 7],
    [3, 30, 5, 8],
    [36, 9, 5, 2],
    [66, 34, 29, 14],
    [16, 7, 7, 7],
    [4, 64, 5, 8],
  ],
  expected: {
    shares: [0.324062722002, 0.348498212681, 0.181676042688, 0.14576302263],
    overdispersion: 0.0897091693365,
    logLikelihood: -80.7917153686,
    alpha: [3.28830738909, 3.53625755151, 1.84349088319, 1.479076709],
    alphaSum: 10.1471325328,
    logLikelihoodWithoutConstant: -706.293757003,
    logLikelihoodAtAllOne: -86.2832301784,
  },
} as const;
