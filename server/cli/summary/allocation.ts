import type { Words } from './words.js';
import type { AllocatedSpecies, Result } from '../../core/model/result.js';
import { englishName } from '../../core/taxa/taxon-name.js';
import { table, wrap } from './layout.js';

/** Species that a pair or group may be, with its birds shared out: an estimate, and said to be one. */
export function allocationLines({ allocation }: Result<string>, words: Words): readonly string[] {
  if (allocation.length === 0) return [];
  const span = ({ low, high }: AllocatedSpecies): string =>
    low === high ? '' : `${words.number(low)}–${words.number(high)}`;
  const told = allocation.filter(({ estimated }) => estimated !== null);
  const untold = allocation.filter(({ estimated }) => estimated === null);
  const rows = told.map((each) => [
    englishName([each.species]),
    words.number(each.identified),
    words.number(each.estimated ?? 0),
    `${span(each)}${each.interval === 'bounds' ? ' *' : ''}`,
    each.undetermined === 0 ? '' : words.number(each.undetermined),
  ]);
  const columns = [
    { title: '', align: 'left', most: 26 },
    { title: 'counted as such', align: 'right' },
    { title: 'estimated', align: 'right' },
    { title: 'interval', align: 'right' },
    { title: 'not shared out', align: 'right' },
  ] as const;
  const unknown = untold.map(
    (each) => `${englishName([each.species])} ${words.number(each.low)}–${words.number(each.high)}`,
  );
  return [
    ...wrap(
      'Pairs and groups shared out by the identified share, as if birds were as easy to identify whatever they were. Never part of the count.',
    ),
    '',
    ...(rows.length > 0 ? table(columns, rows) : []),
    ...(told.some(({ interval }) => interval === 'bounds')
      ? ['', '* All that is possible: too few cells for an interval.']
      : []),
    ...(unknown.length > 0
      ? wrap(
          `No estimate, since some candidate of the pair or group was never identified, or observers named the birds differently; possible: ${unknown.join(', ')}.`,
        )
      : []),
  ];
}
