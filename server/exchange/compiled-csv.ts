import type { Result } from '../core/model/result.js';
import { englishName } from '../core/taxa/taxon-name.js';
import { writeCsv } from './write-csv.js';

/** The compiled lines as a table: one row a taxon, bounds and interval beside the number. */
export function compiledCsv(result: Result<unknown>): string {
  return writeCsv(
    [
      'count',
      'reported',
      'taxon',
      'english',
      'number',
      'low',
      'high',
      'at_least',
      'at_most',
      'flying_through',
      'present_not_counted',
    ],
    result.compiled.map((line) => [
      result.count,
      result.reported,
      line.taxon,
      englishName(line.candidates),
      line.number,
      line.low,
      line.high,
      line.atLeast,
      line.atMost,
      line.flyingThrough,
      line.presentNotCounted ? 'yes' : 'no',
    ]),
  );
}
