import type { Method, Species } from './snapshot.js';

/** How a group's total is settled (method: several literatures, see `consensus/`). */
export const RULES = [
  'designated',
  'highest',
  'mean',
  'median',
  'random-effects',
  'weighted-mean',
  'robust-mean',
] as const;
export type Rule = (typeof RULES)[number];

/**
 * Relative counting error (coefficient of variation) of one line, by method and flock size.
 * Steps are read in order: the first whose `upTo` is not exceeded applies; `upTo: null` is the rest.
 */
export interface CountingErrorStep {
  readonly upTo: number | null;
  readonly cv: number;
}
export type CountingErrorTable = Readonly<Record<Method, readonly CountingErrorStep[]>>;

export interface Protocol {
  readonly rule: Rule;
  /** For the designated rule: the observer per section id, or `*` for every section. */
  readonly designated: Readonly<Record<string, string>>;
  /** |z| from which a count spread is questioned, and serious (ISO 13528 convention: 2 and 3). */
  readonly questionedAt: number;
  readonly seriousAt: number;
  /** Birds at stake from which any other disagreement is questioned, and serious. */
  readonly questionedBirds: number;
  readonly seriousBirds: number;
  /** What an observer's zero means where another counted birds. */
  readonly zeros: 'missed' | 'absent';
  /** Level taken where two observers agree at different resolution. */
  readonly resolution: 'finer' | 'coarser';
  /** How a count with several windows is reported: `highest`, `mean`, or a window id. */
  readonly windows: string;
  /** Pairs of species that observers confuse; each pair sorted, the list sorted. */
  readonly lookAlikes: readonly (readonly [Species, Species])[];
  /** Probability from which a link is proposed to the compiler. */
  readonly linkThreshold: number;
  /** `confirmed`: nothing is deducted before a compiler rules. `proposed`: links above the threshold are. */
  readonly deductLinks: 'confirmed' | 'proposed';
  readonly countingError: CountingErrorTable;
  /** Share of the flocks at rest that leave in an hour: what is expected of movements beforehand. */
  readonly movingPerHour: number;
  /** Speeds in km/h that a moving flock may have (common practice, no source). */
  readonly swimmingMaxKmh: number;
  readonly flyingMinKmh: number;
  readonly flyingMaxKmh: number;
  /** Fewest earlier years below which nothing is said about what number was to be expected. */
  readonly minimumYears: number;
  /** Fewest compared units below which an agreement statistic is "too few". */
  readonly minimumUnits: number;
  /** Roles whose sign-off a seal needs. */
  readonly signOffs: readonly ('leader' | 'compiler')[];
}
