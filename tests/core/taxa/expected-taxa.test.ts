import { expect, it } from 'vitest';
import { expectedTaxa } from '../../../server/core/taxa/expected-taxa.js';

const birds = (taxon: string, year: number, number: number) => ({
  candidates: taxon.split('+'),
  year,
  number,
});

it('puts what was met in most years first, then what there was more of, then by name', () => {
  const history = [
    birds('Gavia immer', 2020, 4),
    birds('Anas platyrhynchos', 2020, 30),
    birds('Anas platyrhynchos', 2021, 10),
    birds('Cygnus olor', 2021, 40),
    birds('Cygnus olor', 2022, 0),
    birds('Aythya affinis+Aythya marila', 2021, 40),
    birds('Bucephala islandica', 2022, 0),
  ];
  // Three years in all: 2022 has nothing but stated zeros.
  expect(expectedTaxa(history)).toEqual([
    { taxon: 'Anas platyrhynchos', years: 2, meanNumber: 40 / 3 },
    { taxon: 'Aythya affinis/marila', years: 1, meanNumber: 40 / 3 },
    { taxon: 'Cygnus olor', years: 1, meanNumber: 40 / 3 },
    { taxon: 'Gavia immer', years: 1, meanNumber: 4 / 3 },
  ]);
  expect(expectedTaxa([])).toEqual([]);
});
