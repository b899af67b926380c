import type { Fault } from '../core/model/fault.js';
import { Refusal } from '../core/refusal.js';
import type { TallyContent, TallyVersion } from '../database/tally-rows.js';
import type { CountAccess } from '../plans/count-access.js';

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
        problem: 'a reason is given, but no tally that this one corrects',
        expected: 'no reason, or the corrected tally in "replaces"',
      }),
    ]);
  }
  if (reason === null || reason === '') {
    throw Refusal.badInput([
      tallyFault('reason', reason, {
        problem: `the correction of tally ${replaces} gives no reason`,
        expected: 'a few words on what was wrong',
      }),
    ]);
  }
  const replaced = current.find(({ id }) => id === replaces);
  if (replaced?.observer === access.viewer.personId) return replaced;
  const newer = access.record.tallies.find((tally) => tally.replaces === replaces);
  if (newer?.observer === access.viewer.personId) {
    throw new Refusal(
      'ALREADY_SUBMITTED',
      `Tally ${replaces} was corrected already. Correct its newest version, ${newer.id}, instead.`,
    );
  }
  throw new Refusal(
    'NOT_FOUND',
    `You have submitted no tally ${replaces} to this count, so there is none to correct.`,
  );
}

function checkWindowOpen({ record }: CountAccess, window: string): void {
  if (!record.closedWindows.has(window)) return;
  throw new Refusal(
    'NOT_NOW',
    `Window ${window} is closed and takes no more tallies. Tell the compiler what should be different: a compiler can still rule on it.`,
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
  const yours = own.map(({ sections, window }) => `${sections.join('+')} in ${window}`).sort();
  throw new Refusal(
    'NOT_ALLOWED',
    `You are not assigned to ${tally.sections.join('+')} in window ${tally.window}. ` +
      (yours.length === 0
        ? 'You have no assignment in this count. '
        : `Your assignments are ${yours.join(', ')}. `) +
      'Ask your leader to assign you.',
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
    `You have already submitted tally ${earlier.id} of ${earlier.sections.join('+')} in window ${earlier.window}. To change it, submit a correction that names it in "replaces" and says why.`,
  );
}

function checkLineIds({ tally }: TallyContent, others: readonly TallyVersion[]): void {
  const taken = new Set(others.flatMap(({ lines }) => lines.map(({ id }) => id)));
  const faults = tally.lines
    .filter(({ id }) => taken.has(id))
    .map(({ id }) =>
      tallyFault('line', id, {
        problem: `"${id}" is the id of a line in another tally`,
        expected: 'an id that no other line of the count has',
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
