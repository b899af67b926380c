/**
 * Source: Newcombe RG (1998) Stat Med 17:857-872, Table I (printed values, from memory, agree).
 * Expected: computed with R 4.2.2 (prop.test, binom.test), re-derived with statsmodels.
 */
export const PROPORTIONS = [
  {
    x: 81,
    n: 263,
    wilson: [0.255288519878, 0.366209576983],
    clopper_pearson: [0.252736745585, 0.367621922601],
  },
  { x: 0, n: 20, wilson: [0, 0.161125158053], clopper_pearson: [0, 0.168433470983] },
] as const;
