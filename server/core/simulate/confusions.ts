import type { Species } from '../model/snapshot.js';

/** How a species is mistaken, and what its identification is left at. */
export interface Confusion {
  /** Chance that an observer takes birds of a flock for another species. */
  readonly rate: number;
  readonly takenFor: readonly (readonly [weight: number, species: Species])[];
  /** Share of the observer's habit of leaving birds coarse that applies: 1 for the hardest. */
  readonly leftCoarse: number;
  /** The pair (or more) that they are left at, sorted. */
  readonly pair: readonly Species[];
  /** The genus or the like, where one is written; sorted. */
  readonly genus: readonly Species[] | null;
}

const POCHARDS = [
  'Aythya affinis',
  'Aythya americana',
  'Aythya collaris',
  'Aythya marila',
  'Aythya valisineria',
];
const SCAUP = ['Aythya affinis', 'Aythya marila'];
const SCOTERS = ['Melanitta americana', 'Melanitta deglandi', 'Melanitta perspicillata'];
const GEESE = ['Branta canadensis', 'Branta hutchinsii'];
const SWANS = ['Cygnus buccinator', 'Cygnus columbianus'];
const GOLDENEYES = ['Bucephala clangula', 'Bucephala islandica'];
const LARGE_MERGANSERS = ['Mergus merganser', 'Mergus serrator'];
const LARGE_DABBLERS = ['Anas platyrhynchos', 'Anas rubripes'];
const GREY_DABBLERS = ['Mareca americana', 'Mareca strepera'];

/**
 * How often birds are taken for another. Published rates: geese in the hand or in photographs, 85.5 %
 * right (Christensen et al. 2017), Canada Geese 99.1 %: taken for the Canada Goose's rate. For mixed
 * rafts from the shore no rate was found published: the others are common practice, no source.
 */
// prettier-ignore
export const CONFUSIONS: Readonly<Record<Species, Confusion>> = {
  'Aythya affinis': { rate: 0.08, takenFor: [[9, 'Aythya marila'], [1, 'Aythya collaris']], leftCoarse: 1, pair: SCAUP, genus: POCHARDS },
  'Aythya marila': { rate: 0.08, takenFor: [[9, 'Aythya affinis'], [1, 'Aythya collaris']], leftCoarse: 1, pair: SCAUP, genus: POCHARDS },
  'Aythya americana': { rate: 0.02, takenFor: [[4, 'Aythya collaris'], [2, 'Aythya valisineria'], [2, 'Aythya affinis'], [2, 'Aythya marila']], leftCoarse: 0.3, pair: POCHARDS, genus: null },
  'Aythya collaris': { rate: 0.03, takenFor: [[6, 'Aythya affinis'], [4, 'Aythya americana']], leftCoarse: 0.3, pair: POCHARDS, genus: null },
  'Aythya valisineria': { rate: 0.02, takenFor: [[1, 'Aythya americana']], leftCoarse: 0.2, pair: POCHARDS, genus: null },
  'Branta canadensis': { rate: 0.009, takenFor: [[1, 'Branta hutchinsii']], leftCoarse: 0.1, pair: GEESE, genus: null },
  'Branta hutchinsii': { rate: 0.15, takenFor: [[1, 'Branta canadensis']], leftCoarse: 0.3, pair: GEESE, genus: null },
  'Cygnus buccinator': { rate: 0.06, takenFor: [[1, 'Cygnus columbianus']], leftCoarse: 0.5, pair: SWANS, genus: null },
  'Cygnus columbianus': { rate: 0.06, takenFor: [[1, 'Cygnus buccinator']], leftCoarse: 0.5, pair: SWANS, genus: null },
  'Bucephala clangula': { rate: 0.003, takenFor: [[1, 'Bucephala islandica']], leftCoarse: 0.05, pair: GOLDENEYES, genus: null },
  'Bucephala islandica': { rate: 0.15, takenFor: [[1, 'Bucephala clangula']], leftCoarse: 0.3, pair: GOLDENEYES, genus: null },
  'Mergus merganser': { rate: 0.01, takenFor: [[1, 'Mergus serrator']], leftCoarse: 0.15, pair: LARGE_MERGANSERS, genus: null },
  'Mergus serrator': { rate: 0.04, takenFor: [[1, 'Mergus merganser']], leftCoarse: 0.2, pair: LARGE_MERGANSERS, genus: null },
  'Lophodytes cucullatus': { rate: 0.005, takenFor: [[1, 'Mergus serrator']], leftCoarse: 0, pair: ['Lophodytes cucullatus'], genus: null },
  'Anas platyrhynchos': { rate: 0.01, takenFor: [[1, 'Anas rubripes']], leftCoarse: 0.05, pair: LARGE_DABBLERS, genus: null },
  'Anas rubripes': { rate: 0.04, takenFor: [[1, 'Anas platyrhynchos']], leftCoarse: 0.1, pair: LARGE_DABBLERS, genus: null },
  'Mareca americana': { rate: 0.02, takenFor: [[1, 'Mareca strepera']], leftCoarse: 0.1, pair: GREY_DABBLERS, genus: null },
  'Mareca strepera': { rate: 0.02, takenFor: [[1, 'Mareca americana']], leftCoarse: 0.1, pair: GREY_DABBLERS, genus: null },
  'Melanitta americana': { rate: 0.03, takenFor: [[1, 'Melanitta perspicillata']], leftCoarse: 1, pair: SCOTERS, genus: null },
  'Melanitta deglandi': { rate: 0.03, takenFor: [[1, 'Melanitta perspicillata']], leftCoarse: 1, pair: SCOTERS, genus: null },
  'Melanitta perspicillata': { rate: 0.04, takenFor: [[1, 'Melanitta deglandi']], leftCoarse: 1, pair: SCOTERS, genus: null },
  'Podiceps auritus': { rate: 0.03, takenFor: [[3, 'Podiceps nigricollis'], [2, 'Podiceps grisegena']], leftCoarse: 0, pair: ['Podiceps auritus'], genus: null },
  'Podiceps grisegena': { rate: 0.03, takenFor: [[1, 'Podiceps auritus']], leftCoarse: 0, pair: ['Podiceps grisegena'], genus: null },
};
