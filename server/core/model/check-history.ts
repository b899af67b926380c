import { keyOf } from '../taxa/candidate-set.js';
import type { Fault } from './fault.js';
import type { RawTable } from './raw.js';
import { readTaxonField } from './check-tally-line.js';
import { RowReader } from './row-reader.js';
import type { EarlierNumber } from './snapshot.js';
import { isCalendarDate } from './time.js';
import { say } from './saying.js';

const BIRDS = say('a whole number of birds, 0 or more');

/**
 * Checks `history.csv`: what earlier years of the same count had. The values count only if no fault
 * was added.
 *
 * @param date of the count: its own year and later ones are no history
 */
export function checkHistory(
  table: RawTable | null,
  date: string,
  faults: Fault[],
): readonly EarlierNumber[] {
  if (table === null) return [];
  // A date that is none has its own fault.
  const thisYear = isCalendarDate(date) ? Number(date.slice(0, 4)) : Infinity;
  const firstRows = new Map<string, number>();
  const numbers = table.rows.map(({ row, fields }): EarlierNumber => {
    const reader = new RowReader(
      table.file,
      (column) => ({ row, cell: fields.get(column) ?? null }),
      faults,
    );
    const candidates = readTaxonField(reader);
    reader.required('year', say('a year with four digits'));
    const year = reader.whole('year', say('a year with four digits'));
    reader.required('number', BIRDS);
    const number = reader.whole('number', BIRDS);
    if (year !== null && (year < 1000 || year > 9999)) {
      reader.fault(
        'year',
        'out-of-range',
        say('{year} is no year', { year }),
        say('a year with four digits'),
      );
    } else if (year !== null && year >= thisYear) {
      const problem = say('{year} is not earlier than the count of {date}', { year, date });
      reader.fault(
        'year',
        'contradiction',
        problem,
        say('a year up to {thisYear}', { thisYear: thisYear - 1 }),
      );
    }
    const key = `${year ?? ''} ${keyOf(candidates)}`;
    const earlier = firstRows.get(key);
    if (earlier === undefined) firstRows.set(key, row);
    else if (candidates.length > 0 && year !== null) {
      const problem = say('row {earlier} has the same taxon in {year}', { earlier, year });
      reader.fault('taxon', 'duplicate-row', problem, say('one row for a taxon and year'));
    }
    return { candidates, year: year ?? 0, number: number ?? 0 };
  });
  return numbers.sort(
    (one, other) =>
      one.year - other.year || (keyOf(one.candidates) < keyOf(other.candidates) ? -1 : 1),
  );
}
