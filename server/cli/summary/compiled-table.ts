import type { Words } from './words.js';
import type { CompiledLine, Result } from '../../core/model/result.js';
import { englishName } from '../../core/taxa/taxon-name.js';
import { table, wrap } from './layout.js';

/** The compiled lines, the total under them, and what their columns mean. */
export function compiledTable(result: Result<string>, words: Words): readonly string[] {
  const some = result.compiled.some(({ flyingThrough }) => flyingThrough > 0);
  const columns = [
    { title: '', align: 'left', most: 26 },
    { title: '', align: 'left', most: 24 },
    { title: 'number', align: 'right' },
    { title: 'interval', align: 'right' },
    { title: 'at least–most', align: 'right' },
    ...(some ? [{ title: 'passing', align: 'right' } as const] : []),
  ] as const;
  const total = (of: (line: CompiledLine) => number): number =>
    result.compiled.reduce((sum, line) => sum + of(line), 0);
  const passing = (birds: number): string => (birds === 0 ? '' : words.number(birds));
  const rows = result.compiled.map((line) => {
    const english = englishName(line.candidates);
    return [
      english,
      // A group has one name only.
      line.taxon === english ? '' : line.taxon,
      `${words.number(line.number)}${line.presentNotCounted ? '+' : ''}`,
      line.low === line.high ? '' : `${words.number(line.low)}–${words.number(line.high)}`,
      line.atLeast === line.atMost
        ? ''
        : `${words.number(line.atLeast)}–${words.number(line.atMost)}`,
      passing(line.flyingThrough),
    ];
  });
  const sums = [
    'Total',
    '',
    words.number(total(({ number }) => number)),
    '',
    '',
    passing(total(({ flyingThrough }) => flyingThrough)),
  ];
  const legend = [
    'At least: birds recorded as exactly this. At most: with all birds recorded as a pair or group that may have been this.',
    'Interval: from known counting error and how far observers differ, 95 %. It cannot know of birds that nobody saw, or that every observer counted low.',
    some ? 'Passing: birds that only flew through, never part of the number.' : '',
    result.compiled.some(({ presentNotCounted }) => presentNotCounted)
      ? 'A + marks birds that someone saw but did not count: the number is at least one too few.'
      : '',
  ];
  return [
    ...table(columns, rows, [sums]),
    '',
    ...legend.filter((text) => text !== '').flatMap((text) => wrap(text)),
  ];
}
