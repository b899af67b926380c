/**
 * The nouns that `reconcile` reads. Plain values, no classes, nothing optional by accident:
 * a field that may be unknown is `null`, so that the same count always has the same bytes.
 * Whoever builds a snapshot (a count folder, the database) has already had it checked by
 * `check-count.ts`; the core does not check again.
 */

import type { Conditions } from './conditions.js';

/** A species' scientific name, or a leaf form such as a hybrid or a domestic type. */
export type Species = string;

/** RFC 3339 with offset, kept as it was written. Compare with `instant()` from `time.ts`. */
export type Instant = string;

/** Longitude and latitude in decimal degrees, WGS 84, in that order (RFC 7946). */
export type Position = readonly [lon: number, lat: number];

/** One or more linear rings, first is the outside; first position = last (RFC 7946). */
export type Polygon = readonly (readonly Position[])[];

export type Role = 'leader' | 'observer' | 'compiler';

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

export interface CountWindow {
  readonly id: string;
  readonly start: Instant;
  readonly end: Instant;
  /** Tallies whose times lie this far apart are still taken as simultaneous. */
  readonly slackMinutes: number;
}

export interface Section {
  readonly id: string;
  readonly name: string;
  readonly polygon: Polygon;
}

export interface VantagePoint {
  readonly id: string;
  readonly name: string;
  readonly position: Position;
}

/** What can be seen from a vantage point. */
export interface View {
  readonly vantage: string;
  readonly polygon: Polygon;
}

/**
 * A piece of the shore as it is drawn under the sections; nothing is worked out from it. `area`: closed
 * rings, the first the outside, the others islands. `line`: one line of two positions or more.
 */
export interface ShorePart {
  readonly form: 'area' | 'line';
  readonly lines: readonly (readonly Position[])[];
}

export const METHODS = ['one-by-one', 'block', 'sample', 'guess'] as const;
export type Method = (typeof METHODS)[number];

/** How the birds of a whole raft can be counted; what they are is then told by small counts inside it. */
export const TOTAL_METHODS = ['block', 'one-by-one', 'guess'] as const satisfies readonly Method[];
export type TotalMethod = (typeof TOTAL_METHODS)[number];

export const ACTIVITIES = ['water', 'land', 'flying-through', 'flushed'] as const;
export type Activity = (typeof ACTIVITIES)[number];

export type Certainty = 'sure' | 'likely';

/** The taxa a tally set out to count. Silence inside is zero; silence outside is no claim. */
export type Scope =
  | { readonly kind: 'all-waterbirds' }
  | { readonly kind: 'waterfowl' }
  | { readonly kind: 'taxa'; readonly species: readonly Species[] };

/**
 * How many birds. `exact`: whole birds, 0 is a stated zero. `range`: the observer gave a span
 * only; its best single number is the rounded middle. `present`: seen but not counted.
 */
export type Quantity =
  | { readonly kind: 'exact'; readonly number: number }
  | { readonly kind: 'range'; readonly low: number; readonly high: number }
  | {
      readonly kind: 'exact-with-range';
      readonly number: number;
      readonly low: number;
      readonly high: number;
    }
  | { readonly kind: 'present' };

export interface TallyLine {
  /** Unique in the count. */
  readonly id: string;
  /** As the observer wrote it. */
  readonly written: string;
  /** The species it could be, sorted, at least one. */
  readonly candidates: readonly Species[];
  readonly quantity: Quantity;
  readonly method: Method;
  /**
   * For method `sample`: how the birds of the whole raft were counted. Left out where it was not said,
   * so that lines from before it was asked have the same bytes; it is taken as `block` then.
   */
  readonly totalMethod?: TotalMethod;
  /** Birds in a block, for block counts and rafts counted in blocks, if kept. */
  readonly block: number | null;
  readonly male: number | null;
  readonly female: number | null;
  readonly adult: number | null;
  readonly immature: number | null;
  readonly activity: Activity;
  readonly time: Instant | null;
  readonly position: Position | null;
  /** The observer's own label for a flock. */
  readonly flock: string | null;
  /** Degrees clockwise from true north, 0 to under 360. */
  readonly heading: number | null;
  /** Section ids, if the birds were seen to come from or go to one. */
  readonly from: string | null;
  readonly to: string | null;
  readonly certainty: Certainty;
  readonly note: string | null;
  /**
   * Coefficient of variation from scan samples of its raft, in place of the protocol's. Only inside
   * `reconcile`, which works it out (`compare/sample-error.ts`); whoever builds a snapshot leaves it.
   */
  readonly sampleError?: number;
}

export interface Tally {
  readonly id: string;
  readonly observer: string;
  /** Everyone who contributed, sorted, the observer among them. */
  readonly party: readonly string[];
  /** Section ids, sorted; more than one for a merged tally. */
  readonly sections: readonly string[];
  readonly window: string;
  /** Where the observer stood, if said. */
  readonly vantage: string | null;
  readonly start: Instant | null;
  readonly end: Instant | null;
  readonly scope: Scope;
  /** Share of its sections that was seen, over 0 to 1. Below 1 it is a lower bound. */
  readonly coverage: number;
  /** One closed outline of what was seen, as it was drawn; left out where nothing was drawn. */
  readonly seenArea?: Polygon;
  /** Left out where none were noted, so that a tally from before they were read has the same bytes. */
  readonly conditions?: Conditions;
  readonly lines: readonly TallyLine[];
}

/** Birds of one identification in an earlier year of the same count. */
export interface EarlierNumber {
  readonly candidates: readonly Species[];
  readonly year: number;
  /** Whole birds, 0 or more. A taxon without a number in a year that has others had none then. */
  readonly number: number;
}

/** Birds of one identification in one of the small counts made inside a raft. */
export interface ScanSample {
  /** A tally line's id, or the flock label of lines of one tally. */
  readonly raft: string;
  /** The tally whose flock label it is; left out where only one tally has the label. */
  readonly tally?: string;
  /** The observer's own name of the small count. */
  readonly sample: string;
  readonly candidates: readonly Species[];
  /** Whole birds, 0 or more. */
  readonly number: number;
}

/** A field mark that an observer noted for the birds of a line; names as its key has them (`marks/`). */
export interface NotedMark {
  /** A tally line's id. */
  readonly line: string;
  readonly mark: string;
  readonly state: string;
}

export interface Snapshot {
  readonly id: string;
  readonly name: string;
  readonly waterbody: string;
  /** ISO 8601 calendar date at the waterbody. */
  readonly date: string;
  /** IANA time zone name. */
  readonly timeZone: string;
  readonly windows: readonly CountWindow[];
  readonly people: readonly Person[];
  readonly sections: readonly Section[];
  readonly vantages: readonly VantagePoint[];
  readonly views: readonly View[];
  readonly tallies: readonly Tally[];
  /** Sorted by year, then candidate set; empty where nothing is known of earlier years. */
  readonly history: readonly EarlierNumber[];
  /** Sorted by raft, tally, sample, then candidate set. */
  readonly samples: readonly ScanSample[];
  /**
   * Sorted by line, then mark. Left out where none were noted, so that a count from before marks
   * were read has the same bytes.
   */
  readonly marks?: readonly NotedMark[];
  /** Sorted by their text. Left out where there is none, so that such a count has the same bytes. */
  readonly shoreline?: readonly ShorePart[];
}
