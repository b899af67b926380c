import type { Species } from '../model/snapshot.js';

/** `female` is the female type: females and young birds that look like them. */
export type Plumage = 'male' | 'female';

/** A species that has a state of a mark. */
export interface Fit {
  readonly species: Species;
  /** In this plumage only; left out: in every plumage that the mark is of. */
  readonly plumage?: Plumage;
  /** Only then, or seen so; otherwise it has another state of the mark. */
  readonly when?: string;
}

export interface MarkState {
  /** As it is written in `marks.csv`. */
  readonly name: string;
  /**
   * Every species of the key that can look so; a bare name stands for every plumage of the mark.
   * One too many leaves a pair, one too few would reject the right species, so when in doubt it is in.
   */
  readonly fits: readonly (Species | Fit)[];
}

/** A field mark and what it can look like. */
export interface FieldMark {
  /** As it is written in `marks.csv`. */
  readonly name: string;
  /** Birds on which it is seen. */
  readonly plumage: Plumage | 'either';
  /** An undependable mark is kept on record, but never decides: it neither narrows nor contradicts. */
  readonly dependability: 'dependable' | 'undependable';
  /** Light, angle, distance, wet plumage and the like by which it misleads. */
  readonly fails: string;
  /** The species it tells apart, where others of the key have none of its states. */
  readonly among?: readonly Species[];
  readonly states: readonly MarkState[];
}

/** How the species of a look-alike group are told apart. */
export interface FieldMarkKey {
  /** "pochards". */
  readonly group: string;
  /** Where its marks are from: a publication, or "common practice, no source". */
  readonly source: string;
  /** Regular species only, as for "Aythya sp.": a key says nothing of vagrants and hybrids. */
  readonly species: readonly Species[];
  readonly marks: readonly FieldMark[];
}

/** The plumages in which a species has a state. */
export function plumagesOf(
  mark: FieldMark,
  state: MarkState,
  species: Species,
): readonly Plumage[] {
  const all = plumagesOfMark(mark);
  const fits = state.fits.flatMap((fit) => {
    if (typeof fit === 'string') return fit === species ? all : [];
    if (fit.species !== species) return [];
    return fit.plumage === undefined ? all : [fit.plumage];
  });
  return all.filter((plumage) => fits.includes(plumage));
}

/** The plumages that a mark is of. */
export function plumagesOfMark({ plumage }: FieldMark): readonly Plumage[] {
  return plumage === 'either' ? ['male', 'female'] : [plumage];
}
