import type { Assignment } from '../database/count-record.js';
import type { TallyHeader } from '../database/tally-rows.js';

/** What decides who is blind to what. `tallies` may hold every version; only current ones count. */
export interface FieldState {
  readonly assignments: readonly Assignment[];
  readonly tallies: readonly TallyHeader[];
  readonly closedWindows: ReadonlySet<string>;
}

/** A place and a window: an assignment's, or a tally's. */
export interface Piece {
  readonly sections: readonly string[];
  readonly window: string;
}

/** The versions that nothing has replaced. */
export function currentTallies<Header extends TallyHeader>(
  tallies: readonly Header[],
): readonly Header[] {
  const replaced = new Set(tallies.map(({ replaces }) => replaces));
  return tallies.filter(({ id }) => !replaced.has(id));
}

/** A person's own tallies are those that they contributed to. */
export function isOwn(tally: TallyHeader, personId: string): boolean {
  return tally.party.includes(personId);
}

/** Whether current tallies of the person cover all sections of the assignment. */
export function isFulfilled(assignment: Assignment, state: FieldState): boolean {
  const own = currentTallies(state.tallies).filter(
    (tally) => tally.window === assignment.window && isOwn(tally, assignment.person),
  );
  const covered = new Set(own.flatMap(({ sections }) => sections));
  return assignment.sections.every((section) => covered.has(section));
}

/**
 * All sections of the cell that a piece lies in: whatever is joined to it, in its window, through
 * assignments and tallies that reach over several sections (method, section 2). Assignments count
 * too, so that a tally that is still to come cannot join what was shown before.
 */
function cellAround(piece: Piece, state: FieldState): ReadonlySet<string> {
  const pieces = [...state.assignments, ...currentTallies(state.tallies)].filter(
    ({ window }) => window === piece.window,
  );
  const cell = new Set(piece.sections);
  for (let before = 0; before < cell.size;) {
    before = cell.size;
    for (const { sections } of pieces) {
      if (sections.some((section) => cell.has(section))) {
        for (const section of sections) cell.add(section);
      }
    }
  }
  return cell;
}

/**
 * Whether a person still has to submit a tally of their own in the cell around a piece. While they
 * do, nothing that anyone else recorded there may reach them.
 */
export function isBlindTo(personId: string, piece: Piece, state: FieldState): boolean {
  if (state.closedWindows.has(piece.window)) return false;
  const cell = cellAround(piece, state);
  return state.assignments.some(
    (assignment) =>
      assignment.person === personId &&
      assignment.window === piece.window &&
      assignment.sections.some((section) => cell.has(section)) &&
      !isFulfilled(assignment, state),
  );
}

/**
 * Whether an observer has earned sight of a piece: the window is closed, or they have a tally in its
 * cell and owe none there.
 */
export function hasOwnIn(personId: string, piece: Piece, state: FieldState): boolean {
  if (state.closedWindows.has(piece.window)) return true;
  const cell = cellAround(piece, state);
  const hasTally = currentTallies(state.tallies).some(
    (tally) =>
      tally.window === piece.window &&
      isOwn(tally, personId) &&
      tally.sections.some((section) => cell.has(section)),
  );
  return hasTally && !isBlindTo(personId, piece, state);
}
