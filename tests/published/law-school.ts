/**
 * Law school sample: test score and grades of 15 schools.
 * Source: Efron B, Tibshirani RJ (1993) An Introduction to the Bootstrap, Table 3.1. Data from
 * memory; the correlation .776 agrees with print.
 * Expected: estimate, jackknife error and acceleration re-derived in Python; intervals by the R
 * package boot 1.3.28.1 with 50,000 resamples, which another generator meets only broadly.
 */
export const LSAT = [576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594];
export const GPA = [
  3.39, 3.3, 2.81, 3.03, 3.44, 3.07, 3, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96,
];
export const LAW_SCHOOL = {
  estimate: 0.776374491289,
  jackknife_se: 0.142518618602,
  acceleration_jackknife: -0.0756715649379,
  boot_se: 0.133864462594,
  percentile95: [0.458986579228, 0.962483591742],
  bca95: [0.317771590873, 0.94122167716],
  percentile90: [0.52284528519, 0.948466157535],
  bca90: [0.41961909993, 0.926498005952],
} as const;
