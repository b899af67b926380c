// Values as they come in from outside, before anything is known about them.
import type { Fault } from './fault.js';
import type { Polygon } from './snapshot.js';

/** What a spreadsheet cell or a form field holds. */
export type RawCell = string | number | boolean | null;

export interface RawRow {
  /** 1-based as a spreadsheet shows it: the header is row 1. */
  readonly row: number;
  readonly fields: ReadonlyMap<string, RawCell>;
}

export interface RawTable {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly RawRow[];
}

/** A parsed JSON document; `undefined` where it could not be parsed, which has its own fault. */
export interface RawDocument {
  readonly file: string;
  readonly value: unknown;
}

/** A count folder as it was read. */
export interface RawCount {
  readonly count: RawDocument;
  readonly places: RawDocument;
  /** `null` for a plan, a count that has no tallies yet, and where they could not be read. */
  readonly tallies: RawTable | null;
  /** Numbers of earlier years, and small counts inside rafts; `null` where there are none. */
  readonly history: RawTable | null;
  readonly samples: RawTable | null;
  /** Field marks noted for tally lines; `null` where there are none. */
  readonly marks: RawTable | null;
  /** What was found wrong while reading, such as a file that is missing. */
  readonly faults: readonly Fault[];
  /** Names of time zones that exist (IANA); the core cannot ask the machine itself. */
  readonly timeZones: readonly string[];
}

/** Ids that the rest may refer to; `null` where the list itself could not be read. */
export interface KnownIds {
  readonly people: readonly string[] | null;
  readonly sections: readonly string[] | null;
  readonly windows: readonly string[] | null;
  readonly vantages: readonly string[] | null;
  /** Polygons of the sections that could be read, by their ids. */
  readonly waters: ReadonlyMap<string, Polygon>;
}
