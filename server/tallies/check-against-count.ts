import type { Fault } from '../core/model/fault.js';
import { Refusal } from '../core/refusal.js';
import type { TallyContent, TallyVersion } from '../database/tally-rows.js';
import type { CountAccess } from '../plans/count-access.js';
import { joined, say } from '../core/model/saying.js';

/**
 * Holds a tally that is right in itself against the rest of its count: the plan, the windows, and
 * what is there already.
 *
 * @param current the tallies of the count that nothing has replaced
 * @returns the tally that this one corrects, or null
 * @throws Refusal NOT_NOW, NOT_ALLOWED, BAD_INPUT; ALREADY_SUBMITTED where the observer has another
 *   tally in its place, which a program can then show beside this one
 */
export function checkAgainstCount(
  access: CountAccess,
  submission: TallyContent,
  current: readonly TallyVersion[],
): TallyVersion | null {
  const { tally } = submission;
  const replaced = replacedTally(access, submission, current);
  for (const window of new Set([tally.window, replaced?.window ?? tally.window])) {
    checkWindowOpen(access, window);
  }
  checkAssigned(access, submission);
  const others = current.filter(({ id }) => id !== replaced?.id);
  checkNotCountedTwice(submission, others);
  checkLineIds(submission, others);
  return replaced;
}

function replacedTally(
  access: CountAccess,
  { replaces, reason }: TallyContent,
  current: readonly TallyVersion[],
): TallyVersion | null {
  if (replaces === null) {
    if (reason === null) return null;
    throw Refusal.badInput([
      tallyFault('reason', reason, {
        problem: say('a reason is given, but no tally that this one corrects'),
        expected: say('no reason, or the corrected tally in "replaces"'),
      }),
    ]);
  }
  if (reason === null || reason === '') {
    throw Refusal.badInput([
      tallyFault('reason', reason, {
        problem: say('the correction of tally {replaces} gives no reason', { replaces }),
        expected: say('a few words on what was wrong'),
      }),
    ]);
  }
  const replaced = current.find(({ id }) => id === replaces);
  if (replaced?.observer === access.viewer.personId) return replaced;
  const newer = access.record.tallies.find((tally) => tally.replaces === replaces);
  if (newer?.observer === access.viewer.personId) {
    throw new Refusal(
      'ALREADY_SUBMITTED',
      say('Tally {replaces} was corrected already. Correct its newest version, {id}, instead.', {
        replaces,
        id: newer.id,
      }),
    );
  }
  throw new Refusal(
    'NOT_FOUND',
    say('You have submitted no tally {replaces} to this count, so there is none to correct.', {
      replaces,
    }),
  );
}

function checkWindowOpen({ record }: CountAccess, window: string): void {
  if (!record.closedWindows.has(window)) return;
  throw new Refusal(
    'NOT_NOW',
    say(
      'Window {window} is closed and takes no more tallies. Tell the compiler what should be different: a compiler can still rule on it.',
      { window },
    ),
  );
}

/** A tally belongs to an assignment of its observer: all of its sections, or some. */
function checkAssigned({ record, viewer }: CountAccess, { tally }: TallyContent): void {
  const own = record.assignments.filter(({ person }) => person === viewer.personId);
  const fits = own.some(
    ({ window, sections }) =>
      window === tally.window && tally.sections.every((section) => sections.includes(section)),
  );
  if (fits) return;
  const yours = own
    .map(({ sections, window }) => ({ sections: sections.join('+'), window }))
    .sort((a, b) => (a.sections < b.sections ? -1 : 1))
    .map((place) => say('{sections} in {window}', place));
  const { window } = tally;
  const sections = tally.sections.join('+');
  throw new Refusal(
    'NOT_ALLOWED',
    yours.length === 0
      ? say(
          'You are not assigned to {sections} in window {window}. You have no assignment in this count. Ask your leader to assign you.',
          { sections, window },
        )
      : say(
          'You are not assigned to {sections} in window {window}. Your assignments are {yours}. Ask your leader to assign you.',
          { sections, window, yours: joined(yours, ', ') },
        ),
  );
}

/** One observer's tallies of one window are of different sections, or birds would count twice. */
function checkNotCountedTwice({ tally }: TallyContent, others: readonly TallyVersion[]): void {
  const earlier = others.find(
    ({ observer, window, sections }) =>
      observer === tally.observer &&
      window === tally.window &&
      sections.some((section) => tally.sections.includes(section)),
  );
  if (earlier === undefined) return;
  throw new Refusal(
    'ALREADY_SUBMITTED',
    say(
      'You have already submitted tally {id} of {sections} in window {window}. To change it, submit a correction that names it in "replaces" and says why.',
      { id: earlier.id, sections: joined(earlier.sections, '+'), window: earlier.window },
    ),
  );
}

function checkLineIds({ tally }: TallyContent, others: readonly TallyVersion[]): void {
  const taken = new Set(others.flatMap(({ lines }) => lines.map(({ id }) => id)));
  const faults = tally.lines
    .filter(({ id }) => taken.has(id))
    .map(({ id }) =>
      tallyFault('line', id, {
        problem: say('"{id}" is the id of a line in another tally', { id }),
        expected: say('an id that no other line of the count has'),
      }),
    );
  if (faults.length > 0) throw Refusal.badInput(faults);
}

function tallyFault(
  column: string,
  value: string | null,
  { problem, expected }: Pick<Fault, 'problem' | 'expected'>,
): Fault {
  return {
    code: column === 'line' ? 'duplicate-id' : 'missing-value',
    file: 'tally',
    row: null,
    column,
    value,
    problem,
    expected,
    nearest: null,
  };
}
