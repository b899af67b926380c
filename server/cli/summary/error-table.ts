import type {
  ErrorTableRow,
  ReEstimatedErrors,
} from '../../core/estimate/re-estimate-counting-error.js';
import { table, wrap } from './layout.js';

/** The protocol's counting error beside the one from paired tallies, step by step. */
export function errorTableText(
  { rows, betweenObservers, observers, groups }: ReEstimatedErrors,
  minimumUnits: number,
  counts: number,
): readonly string[] {
  const columns = [
    { title: 'method', align: 'left' },
    { title: 'birds', align: 'left' },
    { title: 'protocol', align: 'right' },
    { title: 'from tallies', align: 'right' },
    { title: 'interval', align: 'right' },
    { title: 'groups', align: 'right' },
  ] as const;
  const told = rows.some(({ cv }) => cv !== null);
  return [
    ...wrap(
      `Counting error (coefficient of variation) from ${groups} groups of birds that two or more of ${observers} observers counted in full and apart, in ${counts === 1 ? 'one count' : `${counts} counts`}.`,
    ),
    '',
    ...table(
      columns,
      rows.map((row, index) => [
        row.method,
        birdsOf(row, rows[index - 1]),
        percent(row.protocol),
        valueOf(row),
        row.low === null || row.high === null ? '' : `${percent(row.low)} to ${percent(row.high)}`,
        String(row.groups),
      ]),
    ),
    '',
    ...wrap(
      `Too few: under ${minimumUnits} groups. Not told apart: counted only against one other method.`,
    ),
    ...(betweenObservers === null
      ? []
      : wrap(`Between observers alone: ${percent(betweenObservers)}, a part of every row.`)),
    ...(told
      ? wrap(
          'What all observers miss alike is not in it; of small flocks, birds that one did not see are. To use a row, write it into countingError of the protocol.',
        )
      : []),
  ];
}

function birdsOf({ method, upTo }: ErrorTableRow, before: ErrorTableRow | undefined): string {
  const above = before?.method === method ? (before.upTo ?? 0) : 0;
  if (upTo === null) return above === 0 ? 'all' : `${above + 1} and more`;
  return `${above + 1} to ${upTo}`;
}

function valueOf({ cv, missing }: ErrorTableRow): string {
  if (cv !== null) return percent(cv);
  return missing === 'too-few' ? 'too few' : 'not told apart';
}

/** 0.1234 → "12.3 %". */
function percent(share: number): string {
  return `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;
}
