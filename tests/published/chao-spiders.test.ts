/*
 * Spiders under girdled and logged canopies, individuals a species.
 * Source: Sackett TE et al. (2011) Ecosphere 2: art74; Ellison AM et al. (2010) Methods Ecol Evol
 * 1:168-179; data as in the R package iNEXT; Chao A (1984) Scand J Stat 11:265-270.
 * Expected: bias-corrected with the R package vegan 2.6.4; classic form by its formula, which agrees
 * with the iNEXT documentation (43.893, s.e. 14.306; 61.403, s.e. 18.532; from memory). The estimate by
 * coverage (ACE) with vegan; its s.e. is not taken, since vegan's derivative has 1 − Σ i fᵢ where the
 * estimate has Σ i fᵢ.
 */
import { expect, it } from 'vitest';
import { chaoLowerBound } from '../../server/core/agree/detection/chao-lower-bound.js';
import { coverageNumber } from '../../server/core/agree/detection/coverage-number.js';
import { expectRelative } from '../support/expect-relative.js';

const SPIDERS = [
  {
    name: 'girdled',
    individuals: [
      46, 22, 17, 15, 15, 9, 8, 6, 6, 4, 2, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
    ],
    expected: {
      S_obs: 26,
      n: 168,
      f1: 12,
      f2: 4,
      chao1_bias_corrected_no_nfactor: 39.2,
      se_vegan: 10.2069700075,
      ACE: 48.4152290303,
      se_ACE: 3.78889874554,
      chao1_classic_nfactor: 43.8928571429,
      se_classic_nfactor: 14.3055777084,
    },
  },
  {
    name: 'logged',
    individuals: [
      88, 22, 16, 15, 13, 10, 8, 8, 7, 7, 7, 5, 4, 4, 4, 3, 3, 3, 3, 2, 2, 2, 2, 1, 1, 1, 1, 1, 1,
      1, 1, 1, 1, 1, 1, 1, 1,
    ],
    expected: {
      S_obs: 37,
      n: 252,
      f1: 14,
      f2: 4,
      chao1_bias_corrected_no_nfactor: 55.2,
      se_vegan: 13.1452739069,
      ACE: 52.6849942726,
      se_ACE: 3.67698168988,
      chao1_classic_nfactor: 61.4027777778,
      se_classic_nfactor: 18.5315476445,
    },
  },
];

/** How many species had one individual, two, and so on. */
function frequenciesOf(individuals: readonly number[]): number[] {
  return Array.from(
    { length: Math.max(...individuals) },
    (_, less) => individuals.filter((each) => each === less + 1).length,
  );
}

it.each(SPIDERS)('the lower bound of species: $name', ({ individuals, expected }) => {
  const frequencies = frequenciesOf(individuals);
  const classic = chaoLowerBound(frequencies, expected.n);
  expect(classic.seen).toBe(expected.S_obs);
  expect(frequencies.slice(0, 2)).toEqual([expected.f1, expected.f2]);
  expectRelative(classic.value, expected.chao1_classic_nfactor, 1e-9);
  expectRelative(classic.standardError, expected.se_classic_nfactor, 1e-9);
  const corrected = chaoLowerBound(frequencies, Infinity, 'bias-corrected');
  expectRelative(corrected.value, expected.chao1_bias_corrected_no_nfactor, 1e-9);
  // vegan's error is of another derivation (with its ACE estimate), within a fifth of a per cent.
  expectRelative(corrected.standardError, expected.se_vegan, 2e-3);
});

it.each(SPIDERS)('species by coverage: $name', ({ individuals, expected }) => {
  const found = coverageNumber(frequenciesOf(individuals));
  expect(found?.seen).toBe(expected.S_obs);
  expectRelative(found?.value ?? NaN, expected.ACE, 1e-9);
  expect(found?.interval.low).toBeGreaterThan(expected.S_obs);
});
