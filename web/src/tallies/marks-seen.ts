import {
  plumagesOf,
  type FieldMark,
  type FieldMarkKey,
} from '../../../server/core/marks/field-mark-key.js';
import { keysFor, markNamed, stateNamed } from '../../../server/core/marks/field-mark-keys.js';
import {
  plumagesIn,
  weighMarks,
  type MarkedBirds,
  type WeighedMarks,
} from '../../../server/core/marks/weigh-marks.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { wholeNumber, type DraftLine, type DraftMark } from './draft.js';

/** What of a line that is being written its marks are held against; `null` for an unknown taxon. */
export function birdsOfLine(line: DraftLine): MarkedBirds | null {
  const parsed = parseTaxon(line.taxon);
  if (!parsed.ok) return null;
  const number = line.quantity === 'number' ? wholeNumber(line.number) : null;
  return {
    candidates: parsed.candidates,
    quantity: number === null ? { kind: 'present' } : { kind: 'exact', number },
    male: wholeNumber(line.male),
    female: wholeNumber(line.female),
  };
}

/** The keys that are about a line's birds: none for a coot, several for "duck sp.". */
export function keysOfLine(line: DraftLine): readonly FieldMarkKey[] {
  const birds = birdsOfLine(line);
  return birds === null ? [] : keysFor(birds.candidates);
}

/** The states of a mark that the line's birds may have: a line of males shows nothing of females. */
export function statesFor(
  line: DraftLine,
  key: FieldMarkKey,
  mark: FieldMark,
): FieldMark['states'] {
  const birds = birdsOfLine(line);
  const plumages = birds === null ? [] : plumagesIn(birds);
  return mark.states.filter((state) =>
    key.species.some((species) =>
      plumagesOf(mark, state, species).some((each) => plumages.includes(each)),
    ),
  );
}

/**
 * The marks of a line that are about its birds as they are named now. Others stay in the draft, for the
 * taxon or the sexes may be changed back, but are not sent.
 */
export function marksInForce(line: DraftLine): readonly DraftMark[] {
  const keys = keysOfLine(line);
  return line.marks.filter(({ mark: name, state: stateName }) =>
    keys.some((key) => {
      const mark = markNamed(key, name);
      const state = mark === null ? null : stateNamed(mark, stateName);
      return mark !== null && state !== null && statesFor(line, key, mark).includes(state);
    }),
  );
}

/** How the line's name stands against the marks seen; `null` for an unknown taxon. */
export function weighedMarks(line: DraftLine): WeighedMarks | null {
  const birds = birdsOfLine(line);
  return birds === null ? null : weighMarks(birds, marksInForce(line));
}

/** The line with a state of a mark in place of what was seen of it before; `''` takes it back. */
export function withMark(line: DraftLine, mark: string, state: string): DraftLine {
  const others = line.marks.filter((each) => each.mark !== mark);
  return { ...line, marks: state === '' ? others : [...others, { mark, state }] };
}
