import type { Species } from '../model/snapshot.js';

/** Birds by species, sorted by name; species without birds are left out. */
export type Birds = Readonly<Record<Species, number>>;

/** What an observer got wrong or left open, and what it should show up as. */
export const PLANTED_KINDS = ['misidentified', 'left-coarser', 'overlooked', 'slip'] as const;
export type PlantedKind = (typeof PLANTED_KINDS)[number];

/** One error that is in the tallies and known. */
export interface Planted {
  readonly kind: PlantedKind;
  readonly observer: string;
  /** Section that was tallied. */
  readonly section: string;
  /** What the birds truly are. */
  readonly species: Species;
  /** True birds concerned; for a slip, birds written too many or too few. */
  readonly birds: number;
  /** The tally lines that are wrong; none where birds were overlooked. */
  readonly lines: readonly string[];
  /**
   * Lines of other observers of the section about the same birds that say otherwise. Where there
   * are none, the error is in the tallies but nothing speaks against it.
   */
  readonly against: readonly string[];
  /**
   * Of the birds concerned, those that another tally contradicts. Of misidentified birds: so many of
   * them stand apart in the two records of the flock, however the birds are paired (by true numbers,
   * `leastApart`). That another left a pair or genus contradicts nothing, nor does one who made the
   * same mistake, or never found the flock: such an error cannot be found by comparing.
   */
  readonly contradicted: number;
}

/** Two lines, of tallies of different sections, about the same flock. */
export interface TrueLink {
  readonly kind: 'overlap' | 'movement';
  readonly lines: readonly [string, string];
}

/** Birds of one species in a true flock, with every tally line that some of them are in. */
export interface TruePart {
  readonly species: Species;
  readonly birds: number;
  /** Sorted; none where nobody wrote them down. */
  readonly lines: readonly string[];
}

/** Birds that kept together as long as the count went on: half a flock that left is one of its own. */
export interface TrueFlock {
  /** Whether it was in a section when one of that section's observers looked. */
  readonly inSight: boolean;
  readonly parts: readonly TruePart[];
}

/** What was truly there: the form of `truth.json`. */
export interface Truth {
  /** Birds that used the waterbody, each once. */
  readonly total: Birds;
  /** The same by section; a flock that moved stands where it was first. */
  readonly sections: Readonly<Record<string, Birds>>;
  /** Birds that only flew through. */
  readonly flyingThrough: Readonly<Record<string, Birds>>;
  readonly links: readonly TrueLink[];
  /** Every flock that used the waterbody. `null` where only the links are known. */
  readonly flocks: readonly TrueFlock[] | null;
  /**
   * Birds that were there to be seen: in the section when at least one of its observers looked. A
   * flock that moved in time stands in two sections. `null` where it is not known: then `sections`.
   */
  readonly toBeSeen: Readonly<Record<string, Birds>> | null;
  /** Known errors; `null` where nobody wrote them down. */
  readonly planted: readonly Planted[] | null;
  /** By tally, the true birds that its observer found. `null` where it is not known. */
  readonly found: Readonly<Record<string, Birds>> | null;
}
