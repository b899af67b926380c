import type { Species } from '../model/snapshot.js';

/** A kind of flock as it winters on a northern lake. */
export interface FlockKind {
  /** How common flocks of the kind are, against one another. */
  readonly weight: number;
  readonly medianSize: number;
  /** Standard deviation of ln size. */
  readonly spread: number;
  /**
   * The species that it may hold with their mean share of birds. Each flock draws shares about
   * these; with `mixed: false` it is of one species, drawn by the shares.
   */
  readonly species: readonly (readonly [share: number, species: Species])[];
  readonly mixed: boolean;
}

/**
 * Midwinter on a large northern lake: many small flocks of goldeneyes, mergansers and Mallards, a
 * few large rafts of pochards and scaup that hold most of the birds. Invented to that picture;
 * common practice, no source.
 */
// prettier-ignore
export const FLOCK_KINDS: readonly FlockKind[] = [
  { weight: 16, medianSize: 15, spread: 1.0, mixed: true, species: [[0.85, 'Anas platyrhynchos'], [0.15, 'Anas rubripes']] },
  { weight: 10, medianSize: 40, spread: 0.9, mixed: false, species: [[0.96, 'Branta canadensis'], [0.04, 'Branta hutchinsii']] },
  { weight: 13, medianSize: 8, spread: 1.0, mixed: false, species: [[0.98, 'Bucephala clangula'], [0.02, 'Bucephala islandica']] },
  { weight: 9, medianSize: 5, spread: 0.8, mixed: false, species: [[1, 'Bucephala albeola']] },
  { weight: 10, medianSize: 10, spread: 0.9, mixed: false, species: [[0.85, 'Mergus merganser'], [0.15, 'Mergus serrator']] },
  { weight: 5, medianSize: 5, spread: 0.7, mixed: false, species: [[1, 'Lophodytes cucullatus']] },
  { weight: 7, medianSize: 150, spread: 1.2, mixed: true, species: [[0.65, 'Aythya marila'], [0.35, 'Aythya affinis']] },
  { weight: 5, medianSize: 250, spread: 1.1, mixed: true, species: [[0.5, 'Aythya americana'], [0.2, 'Aythya valisineria'], [0.1, 'Aythya collaris'], [0.1, 'Aythya affinis'], [0.1, 'Aythya marila']] },
  { weight: 3, medianSize: 20, spread: 0.9, mixed: false, species: [[1, 'Aythya collaris']] },
  { weight: 3, medianSize: 10, spread: 1.0, mixed: false, species: [[1, 'Clangula hyemalis']] },
  { weight: 2, medianSize: 6, spread: 0.8, mixed: false, species: [[0.8, 'Melanitta deglandi'], [0.15, 'Melanitta perspicillata'], [0.05, 'Melanitta americana']] },
  { weight: 4, medianSize: 60, spread: 1.0, mixed: false, species: [[1, 'Fulica americana']] },
  { weight: 4, medianSize: 6, spread: 0.7, mixed: false, species: [[1, 'Cygnus olor']] },
  { weight: 2, medianSize: 8, spread: 0.7, mixed: false, species: [[0.5, 'Cygnus buccinator'], [0.5, 'Cygnus columbianus']] },
  { weight: 3, medianSize: 12, spread: 0.9, mixed: true, species: [[0.6, 'Mareca strepera'], [0.3, 'Mareca americana'], [0.1, 'Anas acuta']] },
  { weight: 2, medianSize: 1, spread: 0.4, mixed: false, species: [[1, 'Gavia immer']] },
  { weight: 2, medianSize: 2, spread: 0.5, mixed: false, species: [[0.9, 'Podiceps auritus'], [0.1, 'Podiceps grisegena']] },
  { weight: 1, medianSize: 2, spread: 0.4, mixed: false, species: [[1, 'Podilymbus podiceps']] },
  { weight: 1, medianSize: 5, spread: 0.7, mixed: false, species: [[1, 'Anas crecca']] },
  { weight: 1, medianSize: 2, spread: 0.5, mixed: false, species: [[1, 'Nannopterum auritum']] },
];

/** Flocks that only fly over. Common practice, no source. */
export const PASSING_KINDS: readonly FlockKind[] = FLOCK_KINDS.filter((kind) =>
  kind.species.some(([, name]) => name === 'Branta canadensis' || name === 'Mergus merganser'),
);

/** Standard deviation of the ln shares of a mixed flock about their means. No source. */
export const SHARE_SPREAD = 0.8;

/** Species whose sexes differ in the field in winter, with the share of males. No source. */
export const MALE_SHARE: Readonly<Record<Species, number>> = {
  'Anas acuta': 0.55,
  'Anas crecca': 0.55,
  'Anas platyrhynchos': 0.55,
  'Aythya affinis': 0.6,
  'Aythya americana': 0.6,
  'Aythya collaris': 0.6,
  'Aythya marila': 0.6,
  'Aythya valisineria': 0.65,
  'Bucephala albeola': 0.55,
  'Bucephala clangula': 0.55,
  'Clangula hyemalis': 0.55,
  'Lophodytes cucullatus': 0.5,
  'Mareca americana': 0.55,
  'Mareca strepera': 0.55,
  'Mergus merganser': 0.55,
  'Mergus serrator': 0.5,
};
