import { plural, t } from '@lingui/core/macro';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import type { Fill } from './waterbody-map.js';

export type CoverageEntry = CountCoverageQuery['count']['coverage'][number];

/** One mark a person: ● in, ◐ partial, ○ assigned and not in yet. */
export function coverageMarks(entry: CoverageEntry | undefined): string {
  if (entry === undefined) return '';
  const partial = entry.partial.length;
  const full = Math.max(entry.submitted.length - partial, 0);
  return '●'.repeat(full) + '◐'.repeat(partial) + '○'.repeat(missingFrom(entry).length);
}

/** Who is assigned and has not submitted. */
export function missingFrom(entry: CoverageEntry): CoverageEntry['assigned'] {
  return entry.assigned.filter((person) => !entry.submitted.some(({ id }) => id === person.id));
}

/** Whether the section can be compared: the point of sending several observers. */
export function independenceWords(entry: CoverageEntry | undefined): string {
  const count = entry?.independentTallies ?? 0;
  if (count === 0) return t`no full tally yet`;
  return plural(count, { one: 'one independent tally', other: '# independent tallies' });
}

export function coverageFill(entry: CoverageEntry | undefined): Fill {
  if (entry === undefined || entry.assigned.length + entry.submitted.length === 0) return 'empty';
  if (entry.independentTallies >= 2) return 'two';
  if (entry.independentTallies === 1) return 'one';
  return entry.partial.length > 0 ? 'partial' : 'assigned';
}
