import type { NotedMark, Species, TallyLine } from '../model/snapshot.js';
import { isWithin, overlaps, union, type CandidateSet } from '../taxa/candidate-set.js';
import {
  plumagesOf,
  type FieldMark,
  type FieldMarkKey,
  type MarkState,
  type Plumage,
} from './field-mark-key.js';
import { keysFor, markNamed, stateNamed } from './field-mark-keys.js';

/** A mark that was noted, found in a key. */
export interface SeenMark {
  readonly mark: FieldMark;
  readonly state: MarkState;
}

export type MarkNames = Pick<NotedMark, 'mark' | 'state'>;

/** What of a line its marks are held against. */
export type MarkedBirds = Pick<TallyLine, 'candidates' | 'quantity' | 'male' | 'female'>;

/** How a line's identification stands against the marks noted for it (method section 9). */
export interface WeighedMarks {
  /**
   * `coarser`: species that the identification leaves out have every mark as well. `contradicted`:
   * no species that it could be has them all. `not-documented`: no dependable mark was noted.
   */
  readonly outcome: 'supported' | 'coarser' | 'contradicted' | 'not-documented';
  /** What the marks leave, sorted; empty where no species of the group has them all. */
  readonly supported: CandidateSet;
  /** Every species of the keys that were used, and of the line: the coarsest name for the birds. */
  readonly group: CandidateSet;
  /** What it rests on, and what is too undependable to rest anything on; by name. */
  readonly dependable: readonly SeenMark[];
  readonly undependable: readonly SeenMark[];
}

/**
 * Holds a line's identification against the marks noted for it: the species that have every
 * dependable mark are the candidate set that the evidence supports.
 *
 * An undependable mark neither narrows that set nor contradicts anything, alone or with others; a
 * line with undependable marks alone is not documented. A mark counts for a species if some plumage
 * that the line's birds may have shows it, since males and females of one line may each have
 * marks of their own. A key says nothing of species outside it: those of the line stay candidates.
 *
 * @param noted of this line; what no key of its species knows is passed over.
 */
export function weighMarks(line: MarkedBirds, noted: readonly MarkNames[]): WeighedMarks {
  const plumages = plumagesIn(line);
  const used = keysFor(line.candidates)
    .map((key) => ({ key, seen: marksIn(key, noted) }))
    .filter(({ seen }) => seen.some(({ mark }) => mark.dependability === 'dependable'));
  const all = keysFor(line.candidates)
    .flatMap((key) => marksIn(key, noted))
    .sort((one, other) => (one.mark.name < other.mark.name ? -1 : 1));
  const dependable = all.filter(({ mark }) => mark.dependability === 'dependable');
  const undependable = all.filter(({ mark }) => mark.dependability === 'undependable');
  const spokenOf = used.reduce<CandidateSet>((sum, { key }) => union(sum, key.species), []);
  const group = union(line.candidates, spokenOf);
  const found = { group, dependable, undependable };
  if (used.length === 0) return { ...found, outcome: 'not-documented', supported: line.candidates };
  const supported = used.reduce<CandidateSet>(
    (sum, { key, seen }) => union(sum, supportedSet(key, seen, plumages)),
    line.candidates.filter((species) => !spokenOf.includes(species)),
  );
  return { ...found, outcome: outcomeOf(line.candidates, supported), supported };
}

/** The species of a key, sorted, that have every dependable mark in some of these plumages. */
export function supportedSet(
  key: FieldMarkKey,
  seen: readonly SeenMark[],
  plumages: readonly Plumage[],
): CandidateSet {
  const shows = (species: Species, { mark, state }: SeenMark): boolean =>
    plumagesOf(mark, state, species).some((plumage) => plumages.includes(plumage));
  return key.species
    .filter((species) =>
      seen.every((each) => each.mark.dependability === 'undependable' || shows(species, each)),
    )
    .sort();
}

/** The plumages that a line's birds may have: one only where all were noted as male, or as female. */
export function plumagesIn({ quantity, male, female }: MarkedBirds): readonly Plumage[] {
  const number = quantity.kind === 'exact' ? quantity.number : null;
  if (number !== null && number > 0 && male === number) return ['male'];
  if (number !== null && number > 0 && female === number) return ['female'];
  return ['male', 'female'];
}

function outcomeOf(claimed: CandidateSet, supported: CandidateSet): WeighedMarks['outcome'] {
  if (!overlaps(claimed, supported)) return 'contradicted';
  return isWithin(supported, claimed) ? 'supported' : 'coarser';
}

function marksIn(key: FieldMarkKey, noted: readonly MarkNames[]): readonly SeenMark[] {
  return noted.flatMap((each) => {
    const mark = markNamed(key, each.mark);
    const state = mark === null ? null : stateNamed(mark, each.state);
    return mark === null || state === null ? [] : [{ mark, state }];
  });
}
