import type { Fault } from './fault.js';
import type { RawCell } from './raw.js';
import {
  readDecimal,
  readInstant,
  readKnownId,
  readWhole,
  readWord,
  type Range,
  type Reading,
} from './reading.js';
import { say, type Saying } from './saying.js';

export interface PlacedCell {
  readonly row: number | null;
  readonly cell: RawCell;
}

/**
 * Reads the fields of one row and writes down what is wrong with them. Every method gives `null`
 * both for an empty field and for a faulty one: a faulty one has put a fault on the list, and a
 * list that is not empty means that nothing is taken in.
 */
export class RowReader {
  constructor(
    private readonly file: string,
    /** A field and where it stands; `null` for a column that is not there. */
    private readonly at: (column: string) => PlacedCell | null,
    readonly faults: Fault[],
  ) {}

  /** The field without space around it; `null` if it is empty or not there. */
  text(column: string): string | null {
    const cell = this.at(column)?.cell ?? null;
    const text = cell === null ? '' : String(cell).trim();
    return text === '' ? null : text;
  }

  fault(
    column: string,
    code: string,
    problem: Saying,
    expected: Saying,
    nearest: string | null = null,
  ): void {
    this.faults.push({
      code,
      file: this.file,
      row: this.at(column)?.row ?? null,
      column,
      value: this.text(column),
      problem,
      expected,
      nearest,
    });
  }

  /** As `text`, with a fault where it is empty. */
  required(column: string, expected: Saying): string | null {
    const text = this.text(column);
    if (text === null) this.fault(column, 'missing-value', say('nothing is written'), expected);
    return text;
  }

  /** Runs a reading on the field, if there is anything in it. */
  read<T>(column: string, reading: (text: string) => Reading<T>): T | null {
    const text = this.text(column);
    if (text === null) return null;
    const result = reading(text);
    if (result.ok) return result.value;
    this.fault(column, result.code, result.problem, result.expected, result.nearest);
    return null;
  }

  whole(column: string, expected?: Saying): number | null {
    return this.read(column, (text) => readWhole(text, expected));
  }

  decimal(column: string, range: Range, expected: Saying): number | null {
    return this.read(column, (text) => readDecimal(text, range, expected));
  }

  instant(column: string): string | null {
    return this.read(column, readInstant);
  }

  word<Word extends string>(column: string, words: readonly Word[], what: Saying): Word | null {
    return this.read(column, (text) => readWord(text, words, what));
  }

  /** @param known `null` where the list could not be read: then any id is let pass. */
  knownId(column: string, known: readonly string[] | null, what: Saying): string | null {
    return known === null
      ? this.text(column)
      : this.read(column, (text) => readKnownId(text, known, what));
  }

  /** Several ids joined by +, each known; sorted, none twice. */
  knownIds(column: string, known: readonly string[] | null, what: Saying): readonly string[] {
    const ids = (this.text(column) ?? '').split('+').map((id) => id.trim());
    const seen = new Set<string>();
    for (const id of ids) {
      if (id === '') {
        if (ids.length > 1) {
          this.fault(
            column,
            'missing-value',
            say('an id is missing beside a "+"'),
            say('ids joined by +'),
          );
        }
        continue;
      }
      const reading = known === null ? null : readKnownId(id, known, what);
      if (reading?.ok === false) {
        this.fault(column, reading.code, reading.problem, reading.expected, reading.nearest);
      }
      seen.add(id);
    }
    return [...seen].sort();
  }
}
