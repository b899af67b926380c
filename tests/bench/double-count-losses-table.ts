import { table, type Column } from '../../server/cli/summary/layout.js';
import { FATE_WORDS, FATES, type Loss } from './double-count-losses.js';
import type { OneCount } from './double-count-run.js';

const GROUPS: readonly (readonly [string, (loss: Loss) => boolean])[] = [
  ['overlap, 10+', ({ kind, birds }) => kind === 'overlap' && birds >= 10],
  ['overlap, under 10', ({ kind, birds }) => kind === 'overlap' && birds < 10],
  ['movement, 10+', ({ kind, birds }) => kind === 'movement' && birds >= 10],
  ['movement, under 10', ({ kind, birds }) => kind === 'movement' && birds < 10],
];

/** What became of the true links, by kind and size. */
export function lossesTable(measured: readonly (readonly [string, readonly OneCount[]])[]): string {
  const columns: Column[] = [
    { title: 'what became of true links', align: 'left' },
    { title: 'of', align: 'left' },
    { title: 'true', align: 'right' },
    ...FATES.map((fate): Column => ({ title: FATE_WORDS[fate], align: 'right' })),
  ];
  const rows = measured.flatMap(([name, counts]) => {
    const losses = counts.flatMap((count) => count.losses);
    return GROUPS.map(([group, belongs], index) => {
      const own = losses.filter(belongs);
      return [
        index === 0 ? name : '',
        group,
        String(own.length),
        ...FATES.map((fate) => String(own.filter((loss) => loss.fate === fate).length)),
      ];
    });
  });
  return table(columns, rows).join('\n');
}
