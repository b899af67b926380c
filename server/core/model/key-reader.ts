import type { Fault } from './fault.js';
import { nearestOf } from './nearest.js';
import {
  readDecimal,
  readNewId,
  readWhole,
  readWord,
  type Range,
  type Reading,
} from './reading.js';
import { joined, say, type Saying } from './saying.js';

export type JsonObject = Readonly<Record<string, unknown>>;

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function shown(value: unknown): string | null {
  if (value === undefined) return null;
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/**
 * Reads the keys of one JSON object and writes down what is wrong with them, as `RowReader` does
 * for a row: `null` stands for an absent and for a faulty value.
 */
export class KeyReader {
  constructor(
    private readonly file: string,
    /** Where the object stands in its document, such as `windows[0]`; empty for the document. */
    private readonly path: string,
    private readonly object: JsonObject,
    readonly faults: Fault[],
  ) {}

  /** The raw value, `undefined` if the key is not the object's own. */
  value(key: string): unknown {
    return Object.hasOwn(this.object, key) ? this.object[key] : undefined;
  }

  keys(): readonly string[] {
    return Object.keys(this.object);
  }

  at(key: string): string {
    return this.path === '' ? key : `${this.path}.${key}`;
  }

  fault(
    key: string,
    code: string,
    problem: Saying,
    expected: Saying,
    nearest: string | null = null,
  ): void {
    this.faultAt(this.at(key), this.value(key), { code, problem, expected, nearest });
  }

  faultAt(
    where: string,
    value: unknown,
    what: Pick<Fault, 'code' | 'problem' | 'expected' | 'nearest'>,
  ): void {
    this.faults.push({ ...what, file: this.file, row: null, column: where, value: shown(value) });
  }

  /** Keys that are not known: a fault, or a note where nothing like it is known either. */
  unknownKeys(known: readonly string[], notes: string[] | null): void {
    const absent = known.filter((key) => this.value(key) === undefined);
    for (const key of this.keys()) {
      if (known.includes(key)) continue;
      const nearest = nearestOf(key, absent);
      if (notes !== null && nearest === null) {
        notes.push(
          `${this.file}: key ${this.at(key)} is not one that is read; it was passed over.`,
        );
        continue;
      }
      const expected = say('keys {known}', { known: joined(known, ', ') });
      this.fault(key, 'unknown-key', say('"{key}" is not a known key', { key }), expected, nearest);
    }
  }

  private typed<T>(
    key: string,
    expected: Saying,
    needed: boolean,
    take: (value: unknown) => T | null,
  ): T | null {
    const value = this.value(key);
    if (value === undefined || value === null) {
      if (needed) this.fault(key, 'missing-value', say('nothing is given'), expected);
      return null;
    }
    const taken = take(value);
    if (taken === null) {
      this.fault(
        key,
        'wrong-type',
        say('{entry} is of the wrong kind', { entry: shown(value) ?? '' }),
        expected,
      );
    }
    return taken;
  }

  /** A text without space around it; empty counts as absent. */
  text(key: string, expected: Saying, needed = true): string | null {
    const text = this.typed(key, expected, needed, (value) =>
      typeof value === 'string' ? value.trim() : null,
    );
    if (text !== '') return text;
    if (needed) this.fault(key, 'missing-value', say('nothing is written'), expected);
    return null;
  }

  list(key: string, expected: Saying, needed = true): readonly unknown[] | null {
    return this.typed(key, expected, needed, (value) =>
      Array.isArray(value) ? (value as readonly unknown[]) : null,
    );
  }

  child(key: string, expected: Saying, needed = true): KeyReader | null {
    return this.typed(key, expected, needed, (value) =>
      isObject(value) ? new KeyReader(this.file, this.at(key), value, this.faults) : null,
    );
  }

  /** A reader for every entry of a list; an entry that is no object is a fault. */
  objects(key: string, expected: Saying, needed = true): readonly KeyReader[] | null {
    const list = this.list(key, expected, needed);
    if (list === null) return null;
    return list.flatMap((entry, index) => {
      const where = `${this.at(key)}[${index}]`;
      if (isObject(entry)) return [new KeyReader(this.file, where, entry, this.faults)];
      const problem = say('{entry} is of the wrong kind', { entry: shown(entry) ?? '' });
      this.faultAt(where, entry, { code: 'wrong-type', problem, expected, nearest: null });
      return [];
    });
  }

  /** Runs a reading on a text. */
  read<T>(
    key: string,
    expected: Saying,
    reading: (text: string) => Reading<T>,
    needed = true,
  ): T | null {
    const text = this.text(key, expected, needed);
    return text === null ? null : this.take(key, reading(text));
  }

  newId(key: string): string | null {
    return this.read(key, say('an id'), readNewId);
  }

  word<Word extends string>(
    key: string,
    words: readonly Word[],
    what: Saying,
    needed = true,
  ): Word | null {
    return this.read(key, joined(words, ', '), (text) => readWord(text, words, what), needed);
  }

  decimal(key: string, range: Range, expected: Saying, needed = true): number | null {
    const number = this.number(key, expected, needed);
    return number === null ? null : this.take(key, readDecimal(String(number), range, expected));
  }

  whole(key: string, expected: Saying, needed = true): number | null {
    const number = this.number(key, expected, needed);
    return number === null ? null : this.take(key, readWhole(String(number), expected));
  }

  flag(key: string, expected: Saying): boolean | null {
    return this.typed(key, expected, true, (value) => (typeof value === 'boolean' ? value : null));
  }

  private number(key: string, expected: Saying, needed: boolean): number | null {
    return this.typed(key, expected, needed, (value) => (typeof value === 'number' ? value : null));
  }

  private take<T>(key: string, result: Reading<T>): T | null {
    if (result.ok) return result.value;
    this.fault(key, result.code, result.problem, result.expected, result.nearest);
    return null;
  }
}
