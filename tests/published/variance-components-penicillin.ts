/**
 * Diameters of growth inhibition zones (mm): 24 plates (rows) by 6 samples of penicillin (columns).
 * Source: Davies OL, Goldsmith PL (1972) Statistical Methods in Research and Production; R data
 * lme4::Penicillin.
 * Expected: mean squares by R stats::anova and components in closed form on the published data;
 * lme4 1.1.31 by REML gives plate 0.716905, sample 3.731132, residual 0.302415.
 */
export const PENICILLIN = {
  diameters: [
    [27, 23, 26, 23, 23, 21],
    [27, 23, 26, 23, 23, 21],
    [25, 21, 25, 24, 24, 20],
    [26, 23, 25, 23, 23, 20],
    [25, 22, 26, 22, 23, 20],
    [24, 22, 25, 23, 22, 19],
    [24, 20, 23, 21, 22, 19],
    [26, 22, 26, 24, 24, 21],
    [24, 21, 24, 22, 22, 20],
    [24, 21, 24, 23, 22, 19],
    [26, 23, 26, 24, 24, 21],
    [25, 22, 26, 24, 24, 20],
    [26, 24, 26, 24, 25, 22],
    [26, 23, 26, 23, 23, 20],
    [26, 23, 25, 24, 24, 22],
    [25, 22, 25, 23, 23, 20],
    [25, 21, 24, 23, 23, 20],
    [25, 22, 24, 23, 23, 19],
    [24, 21, 23, 21, 21, 19],
    [26, 23, 26, 24, 24, 21],
    [25, 21, 24, 22, 22, 18],
    [25, 22, 25, 22, 22, 20],
    [24, 21, 24, 22, 24, 19],
    [24, 21, 24, 22, 21, 18],
  ],
  expected: { plate: 0.71690821256, sample: 3.7309178744, residual: 0.302415458937 },
} as const;
