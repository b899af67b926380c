/*
 * Pentosans of two materials, 7 laboratories, 3 replicates.
 * Source: ASTM E691-05, Table 8; data as distributed with the R package PMCMRplus; statistics of
 * Mandel as in ISO 5725-2.
 * Expected: computed with R 4.2.2 from the formulas of ASTM E691; h and k re-derived in Python.
 * Critical values printed in ASTM E691, from memory: at 0.5 % h 2.05 for 7 laboratories, k 2.03 for 3
 * replicates.
 */
import { describe, expect, it } from 'vitest';
import { mandelConsistency } from '../../server/core/agree/mandel-consistency.js';
import { expectRelative } from '../support/expect-relative.js';

const MATERIALS = [
  {
    name: 'A',
    laboratories: [
      [0.44, 0.49, 0.44],
      [0.41, 0.41, 0.41],
      [0.51, 0.51, 0.51],
      [0.4, 0.38, 0.37],
      [0.49, 0.49, 0.49],
      [0.43, 0.41, 0.4],
      [0.186, 0.171, 0.153],
    ],
    expected: {
      lab_means: [0.456666666667, 0.41, 0.51, 0.383333333333, 0.49, 0.413333333333, 0.17],
      lab_sds: [0.0288675134595, 0, 0, 0.0152752523165, 0, 0.0152752523165, 0.0165227116419],
      grand_mean: 0.404761904762,
      sd_of_lab_means: 0.113069253489,
      repeatability_sd: 0.0149904731651,
      reproducibility_sd: 0.113729792088,
      h: [
        0.459052839768, 0.0463264333711, 0.930740161364, -0.189517227427, 0.753857415766,
        0.0758068909709, -2.07626651381,
      ],
      k: [1.92572396758, 0, 0, 1.0189973424, 0, 1.0189973424, 1.10221415027],
      'h_critical_0.5pct_two_sided': 2.0536251289,
      'k_critical_0.5pct': 2.02617129597,
    },
  },
  {
    name: 'D',
    laboratories: [
      [1.25, 1.25, 1.42],
      [1.25, 1.25, 1.26],
      [1.35, 1.35, 1.35],
      [1.29, 1.29, 1.29],
      [1.23, 1.23, 1.23],
      [1.31, 1.3, 1.31],
      [1.13, 1.15, 1.15],
    ],
    expected: {
      lab_means: [1.30666666667, 1.25333333333, 1.35, 1.29, 1.23, 1.30666666667, 1.14333333333],
      lab_sds: [0.0981495457622, 0.0057735026919, 0, 0, 0, 0.0057735026919, 0.0115470053838],
      grand_mean: 1.26857142857,
      sd_of_lab_means: 0.0675732015383,
      repeatability_sd: 0.0374801534784,
      reproducibility_sd: 0.0741798187019,
      h: [
        0.563762515731, -0.225505006292, 1.20504237738, 0.317116415099, -0.570809547178,
        0.563762515731, -1.85336927047,
      ],
      k: [2.61870714641, 0.154041596847, 0, 0, 0, 0.154041596847, 0.308083193695],
      'h_critical_0.5pct_two_sided': 2.0536251289,
      'k_critical_0.5pct': 2.02617129597,
    },
  },
];

describe.each(MATERIALS)('pentosans, material $name', ({ laboratories, expected }) => {
  const found = mandelConsistency(laboratories, 0.005);

  it('has the means and deviations', () => {
    expectRelative(found?.grandMean ?? NaN, expected.grand_mean, 1e-9);
    expectRelative(found?.deviationOfMeans ?? NaN, expected.sd_of_lab_means, 1e-9);
    expectRelative(found?.repeatability ?? NaN, expected.repeatability_sd, 1e-9);
    expectRelative(found?.reproducibility ?? NaN, expected.reproducibility_sd, 1e-9);
  });

  it('has h and k of every laboratory, and their critical values', () => {
    found?.laboratories.forEach((laboratory, place) => {
      expectRelative(laboratory.mean, expected.lab_means[place] ?? NaN, 1e-9);
      expect(laboratory.standardDeviation).toBeCloseTo(expected.lab_sds[place] ?? NaN, 9);
      expectRelative(laboratory.h ?? NaN, expected.h[place] ?? NaN, 1e-9);
      expect(laboratory.k).toBeCloseTo(expected.k[place] ?? NaN, 9);
      expectRelative(laboratory.kCritical ?? NaN, expected['k_critical_0.5pct'], 1e-9);
    });
    expect(found?.laboratories.length).toBe(7);
    expectRelative(found?.hCritical ?? NaN, expected['h_critical_0.5pct_two_sided'], 1e-9);
  });
});
