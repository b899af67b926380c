/**
 * Four judges, six targets.
 * Source: Shrout PE, Fleiss JL (1979) Psychol Bull 86:420-428, Tables 2-4; intervals of agreement by
 * McGraw KO, Wong SP (1996) Psychol Methods 1:30-46. Printed .17 .29 .71 .44 .62 .91 (from memory).
 * Expected: computed with the R packages psych 2.2.9 and irr 0.84.1, re-derived in Python. The limits
 * of the agreement of a mean are psych's (irr 0.84 has others, from degrees of freedom of a single).
 */
export const JUDGES = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];
export const JUDGES_ICC = {
  meanSquares: {
    things: 11.2416666667,
    observers: 32.4861111111,
    residual: 1.01944444444,
    within: 6.26388888889,
  },
  oneWaySingle: { value: 0.165741768405, lower: -0.132932324875, upper: 0.722560062328 },
  oneWayMean: { value: 0.442797133679, lower: -0.884442155238, upper: 0.912415420341 },
  agreementSingle: { value: 0.289763779528, lower: 0.0187865133747, upper: 0.761084369649 },
  agreementMean: { value: 0.620050547599, lower: 0.0711368153025, upper: 0.927232040168 },
  consistencySingle: { value: 0.714840714841, lower: 0.342464765034, upper: 0.945858259955 },
  consistencyMean: { value: 0.909315542377, lower: 0.675674713816, upper: 0.985891678169 },
} as const;
