import { t } from '@lingui/core/macro';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { clock, listed } from '../ui/words.js';
import type { CoverageEntry } from './coverage-words.js';

type Assignment = CountCoverageQuery['count']['assignments'][number];

/** One person of a section in a window: whether their tally is in, and what else is known of it. */
export interface PersonThere {
  readonly id: string;
  readonly name: string;
  readonly state: 'in' | 'part' | 'expected';
  /** `from Old pier, in at 11:02, corrected`. */
  readonly words: string;
}

/** Everyone who was to count a section in a window, or has: by name. */
export function peopleThere(
  entry: CoverageEntry,
  assignments: readonly Assignment[],
  timeZone: string,
): readonly PersonThere[] {
  const here = assignments.filter(
    ({ sections, window }) =>
      window.id === entry.window.id && sections.some(({ id }) => id === entry.section.id),
  );
  const everyone = [...entry.assigned, ...entry.submitted].filter(
    ({ id }, index, all) => all.findIndex((one) => one.id === id) === index,
  );
  return everyone
    .map(({ id, name }): PersonThere => {
      const own = here.filter(({ person }) => person.id === id);
      const isIn = entry.submitted.some((one) => one.id === id);
      const isPart = entry.partial.some((one) => one.id === id);
      const state = isPart ? 'part' : isIn ? 'in' : 'expected';
      return { id, name, state, words: personWords(own, state, timeZone) };
    })
    .sort((one, other) => (one.name < other.name ? -1 : one.name > other.name ? 1 : 0));
}

function personWords(
  own: readonly Assignment[],
  state: PersonThere['state'],
  timeZone: string,
): string {
  const names = own.flatMap(({ vantage }) => (vantage ? [vantage.name] : []));
  const places = listed([...new Set(names)]);
  const tally = own.find((one) => one.tally)?.tally;
  const time = tally ? clock(tally.submittedAt, timeZone) : null;
  return [
    own.length === 0
      ? t`in another’s party`
      : names.length === 0
        ? t`from where they choose`
        : t`from ${places}`,
    state === 'expected'
      ? t`not in yet`
      : time === null
        ? t({ message: 'in', context: 'a tally has come in' })
        : t`in at ${time}`,
    ...(state === 'part' ? [t`saw part of it`] : []),
    ...(tally && tally.version > 1 ? [t`corrected`] : []),
  ].join(', ');
}
