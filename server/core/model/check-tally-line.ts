import { parseTaxon } from '../taxa/parse-taxon.js';
import type { KnownIds } from './raw.js';
import { readNewId } from './reading.js';
import type { RowReader } from './row-reader.js';
import {
  ACTIVITIES,
  METHODS,
  TOTAL_METHODS,
  type Method,
  type Position,
  type Quantity,
  type Species,
  type TallyLine,
  type TotalMethod,
} from './snapshot.js';
import { joined, say, type Saying } from './saying.js';

const WHOLE_BIRDS = say(
  'a whole number of birds, 0 or more, or nothing if they were seen but not counted',
);

/**
 * Checks one tally line. The value counts only if no fault was added.
 *
 * @param defaultId the line's id where the row gives none.
 */
export function checkTallyLine(reader: RowReader, known: KnownIds, defaultId: string): TallyLine {
  const quantity = checkQuantity(reader);
  reader.required('method', joined(METHODS, ', '));
  const method = reader.word('method', METHODS, say('counting method')) ?? 'guess';
  const totalMethod = checkTotalMethod(reader, method);
  return {
    id: reader.read('line', readNewId) ?? defaultId,
    written: reader.text('taxon') ?? '',
    candidates: checkTaxon(reader),
    quantity,
    method,
    ...(totalMethod !== null && { totalMethod }),
    block: checkBlock(reader, totalMethod ?? method),
    ...checkSubCounts(reader, quantity),
    activity: reader.word('activity', ACTIVITIES, say('known activity')) ?? 'water',
    time: reader.instant('time'),
    position: checkPosition(reader),
    flock: reader.text('flock'),
    heading: reader.decimal(
      'heading',
      { from: 0, under: 360 },
      say('degrees clockwise from north, 0 to under 360'),
    ),
    from: reader.knownId('from', known.sections, say('section')),
    to: reader.knownId('to', known.sections, say('section')),
    certainty: reader.word('certainty', ['sure', 'likely'], say('known certainty')) ?? 'sure',
    note: reader.text('note'),
  };
}

function checkTaxon(reader: RowReader): readonly Species[] {
  return readTaxonField(reader, (taxon) =>
    say('{taxon}; a tally that saw no bird at all is one row with number 0 and no taxon', {
      taxon,
    }),
  );
}

/**
 * The candidate set of the field `taxon`; none, and a fault, where it is not one.
 *
 * @param ifEmpty what is expected where nothing is written, in which another row may help too
 */
export function readTaxonField(
  reader: RowReader,
  ifEmpty: (taxon: Saying) => Saying = (taxon) => taxon,
): readonly Species[] {
  const parsed = parseTaxon(reader.text('taxon') ?? '');
  if (parsed.ok) return parsed.candidates;
  const empty = reader.text('taxon') === null;
  reader.fault(
    'taxon',
    empty ? 'missing-value' : 'unknown-taxon',
    parsed.problem,
    empty ? ifEmpty(parsed.expected) : parsed.expected,
    parsed.nearest,
  );
  return [];
}

function checkQuantity(reader: RowReader): Quantity {
  const number = reader.whole('number', WHOLE_BIRDS);
  const low = reader.whole('low');
  const high = reader.whole('high');
  // A faulty field reads as null too; then nothing more is said of it than its own fault.
  for (const [one, other] of [
    ['low', 'high'],
    ['high', 'low'],
  ] as const) {
    if (reader.text(one) !== null && reader.text(other) === null) {
      reader.fault(
        other,
        'low-high',
        say('{one} is given without {other}', { one, other }),
        say('both or neither'),
      );
    }
  }
  if (low === null || high === null) {
    return number === null ? { kind: 'present' } : { kind: 'exact', number };
  }
  if (low > high) {
    reader.fault(
      'low',
      'low-high',
      say('low {low} is above high {high}', { low, high }),
      say('low not above high'),
    );
  } else if (number !== null && (number < low || number > high)) {
    reader.fault(
      'number',
      'low-high',
      say('number {number} is not between low {low} and high {high}', { number, low, high }),
      say('a number from low to high'),
    );
  }
  return number === null
    ? { kind: 'range', low, high }
    : { kind: 'exact-with-range', number, low, high };
}

/** How the whole of a raft was counted; `null` where it is not said. */
function checkTotalMethod(reader: RowReader, method: Method): TotalMethod | null {
  const totalMethod = reader.word('total-method', TOTAL_METHODS, say('way to count a whole raft'));
  if (totalMethod !== null && method !== 'sample' && reader.text('method') !== null) {
    reader.fault(
      'total-method',
      'contradiction',
      say('a way to count the whole raft stands on a line counted by "{method}"', {
        method: reader.text('method') ?? '',
      }),
      say('method sample, or no total-method'),
    );
  }
  return totalMethod;
}

function checkBlock(reader: RowReader, method: Method): number | null {
  const block = reader.whole('block', say('the number of birds in a block, 1 or more'));
  if (block === 0) {
    reader.fault(
      'block',
      'out-of-range',
      say('a block of 0 birds counts nothing'),
      say('1 bird or more'),
    );
  }
  if (block !== null && method !== 'block' && reader.text('method') !== null) {
    reader.fault(
      'block',
      'contradiction',
      say('a block size stands on a line counted by "{method}"', {
        method: reader.text('method') ?? '',
      }),
      say('method block, or total-method block on a line of method sample, or no block size'),
    );
  }
  return block;
}

function checkSubCounts(
  reader: RowReader,
  quantity: Quantity,
): Pick<TallyLine, 'male' | 'female' | 'adult' | 'immature'> {
  const [male, female] = [reader.whole('male'), reader.whole('female')];
  const [adult, immature] = [reader.whole('adult'), reader.whole('immature')];
  const most =
    quantity.kind === 'present'
      ? null
      : quantity.kind === 'range'
        ? quantity.high
        : quantity.number;
  // A number that could not be read has its own fault.
  const numberIsFaulty =
    quantity.kind === 'present' &&
    ['number', 'low', 'high'].some((column) => reader.text(column) !== null);
  const sums = [
    ['male', say('male and female'), male, female],
    ['adult', say('adult and immature'), adult, immature],
  ] as const;
  for (const [column, words, one, other] of sums) {
    if ((one === null && other === null) || numberIsFaulty) continue;
    const sum = (one ?? 0) + (other ?? 0);
    const where = one === null ? (column === 'male' ? 'female' : 'immature') : column;
    if (most === null) {
      reader.fault(
        where,
        'sub-counts',
        say('{words} add up to {sum} on a line without a number', { words, sum }),
        say('a number of at least {sum}, or no sub-counts', { sum }),
      );
    } else if (sum > most) {
      reader.fault(
        where,
        'sub-counts',
        say("{words} add up to {sum}, more than the line's {most}", { words, sum, most }),
        say('at most {most}', { most }),
      );
    }
  }
  return { male, female, adult, immature };
}

function checkPosition(reader: RowReader): Position | null {
  const lon = reader.decimal('lon', { from: -180, to: 180 }, say('degrees from -180 to 180'));
  const lat = reader.decimal('lat', { from: -90, to: 90 }, say('degrees from -90 to 90'));
  for (const [one, other] of [
    ['lon', 'lat'],
    ['lat', 'lon'],
  ] as const) {
    if (reader.text(one) !== null && reader.text(other) === null) {
      reader.fault(
        other,
        'missing-value',
        say('{one} is given without {other}', { one, other }),
        say('both or neither'),
      );
    }
  }
  return lon === null || lat === null ? null : [lon, lat];
}
