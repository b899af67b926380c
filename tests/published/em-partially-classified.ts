/**
 * Genetic linkage: four classes of which the first is a mixture of two.
 * Source: Rao CR (1973) Linear Statistical Inference, 2nd ed., pp 368-369; Dempster AP, Laird NM,
 * Rubin DB (1977) J R Stat Soc B 39:1-38, section 1.
 * Data and the published values (0.6268, first iterate 0.608247423) from memory of the paper.
 * Expected: computed from the closed-form root of the likelihood equation; iterates by hand of the
 * recursion in the paper. Both agree with the published digits.
 */
export const LINKAGE = {
  counts: [125, 18, 20, 34],
  start: 0.5,
  expected: {
    /** Its information, standard error and ln likelihood (classes times 4, without constant) there. */
    observedInformation: 377.516900395,
    standardError: 0.0514673492009,
    logLikelihood: 67.3841020947,
    theta: 0.626821497871,
    iterates: [
      0.5, 0.60824742268, 0.624321050369, 0.62648887908, 0.626777322347, 0.62681563211,
      0.626820719019, 0.626821394456, 0.62682148414, 0.626821496048, 0.626821497629, 0.626821497839,
      0.626821497867,
    ],
  },
} as const;

/**
 * A 2 × 2 table with units that are classified by row only or by column only.
 * Source: Little RJA, Rubin DB, Statistical Analysis with Missing Data, example of a partially
 * classified 2 × 2 table; data from memory, not held against a print.
 * Expected: computed by an independent EM run to convergence and checked by direct maximisation.
 */
export const PARTLY_CLASSIFIED_TABLE = {
  complete: [
    [100, 50],
    [75, 75],
  ],
  rowOnly: [30, 60],
  columnOnly: [28, 60],
  expected: {
    probabilities: [
      [0.279474884922, 0.174024251354],
      [0.238719102248, 0.307781761477],
    ],
    logLikelihoodWithoutConstant: -532.920918797,
    completeCounts: [
      [133.588994993, 83.1835921471],
      [114.107730874, 147.119681986],
    ],
    iteratesFromUniform: [
      [0.269874476987, 0.198744769874, 0.248953974895, 0.282426778243],
      [0.275818623103, 0.183066575275, 0.243819498099, 0.297295303523],
      [0.278020890901, 0.177477430675, 0.240947965773, 0.303553712651],
      [0.278893501484, 0.175368473223, 0.239645518422, 0.306092506872],
    ],
  },
} as const;

/**
 * Counts identified at several nested levels. No publication: made up, with the closed form that
 * nested groups have (each group split in proportion to its identified members, from the top down),
 * computed independently.
 */
export const NESTED_LEVELS = {
  species: { a: 30, b: 10, c: 20, d: 40 },
  groups: [
    { members: ['a', 'b'], count: 20 },
    { members: ['c', 'd'], count: 15 },
    { members: ['a', 'b', 'c', 'd'], count: 25 },
  ],
  expected: {
    proportions: [0.333333333333, 0.111111111111, 0.185185185185, 0.37037037037],
  },
} as const;
