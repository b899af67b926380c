import { DETECTION, MERGED, MOVING, NOTES, PARTIAL, PARTIES } from './model.js';
import { slotsNeeded } from './schedule.js';

/** Observers count alike, or each by a habit of the own: careful, quick, by proportion samples. */
export const METHOD_MIXES = ['usual', 'mixed'] as const;
export type MethodMix = (typeof METHOD_MIXES)[number];

/** What a simulated count is to be like; the model is described in `model.ts`. */
export interface SimulationOptions {
  /** Whole number from 0 to 2³² − 1: the same seed and options give the same count. */
  readonly seed: number;
  readonly sections: number;
  readonly observers: number;
  /** Counts of every section, independent unless observers count together. */
  readonly perSection: number;
  /** Birds that use the lake. */
  readonly birds: number;
  readonly methods: MethodMix;
  /** Median of what observers write for each true bird where counting errs: 1 is right on median. */
  readonly bias: number;
  /** Coefficient of variation of observers' own lasting ratios. */
  readonly observerSpread: number;
  /** Chance to find a pair at 500 m. */
  readonly detection: number;
  /** Multiplies the protocol's counting error; 0 for none. */
  readonly error: number;
  /** Multiplies the chance of misidentification. */
  readonly misidentified: number;
  /** Multiplies the habit of leaving birds at a pair or genus. */
  readonly leftCoarse: number;
  /** Multiplies the error of placing flocks. */
  readonly placing: number;
  /** Share of flocks that move. */
  readonly moving: number;
  /** Share of lines that are halved or doubled by a slip. */
  readonly slips: number;
  /** Share of tallies with only a part of the section in sight. */
  readonly partial: number;
  /** Share of neighbouring sections, counted at one time, that one observer tallies as one. */
  readonly merged: number;
  /** Share of sections of which two observers count together. */
  readonly parties: number;
  /** Chance that the time, and the position, of a flock is noted. */
  readonly timesNoted: number;
  readonly positionsNoted: number;
  /** Chance that the heading, and the section aimed at, of a swimming flock is noted. */
  readonly headingsNoted: number;
  readonly destinationsNoted: number;
  /** Share of observers who tally all that they see, past the lines of their section too. */
  readonly pastTheLine: number;
  /** Share of moving flocks of which only a part leaves, or which join another. */
  readonly splitting: number;
  /** Share of tallies with one total a taxon instead of flock by flock. */
  readonly lumping: number;
}

/** The usual case: two experienced observers at every section, right on median. */
export const DEFAULT_OPTIONS: SimulationOptions = {
  seed: 1,
  sections: 4,
  observers: 4,
  perSection: 2,
  birds: 6000,
  methods: 'usual',
  bias: 1,
  observerSpread: 0,
  detection: DETECTION,
  error: 1,
  misidentified: 1,
  leftCoarse: 1,
  placing: 1,
  moving: MOVING,
  slips: 0,
  partial: PARTIAL,
  merged: MERGED,
  parties: PARTIES,
  timesNoted: NOTES.time,
  positionsNoted: NOTES.position,
  headingsNoted: NOTES.heading,
  destinationsNoted: NOTES.destination,
  pastTheLine: 0,
  splitting: 0,
  lumping: 0,
};

/** Nobody errs and all see all; observers still leave birds at pairs. */
export const WITHOUT_ERRORS: Partial<SimulationOptions> = {
  detection: 1,
  error: 0,
  misidentified: 0,
  placing: 0,
  partial: 0,
};

interface Limit {
  readonly key: Exclude<keyof SimulationOptions, 'methods'>;
  readonly low: number;
  readonly high: number;
  readonly whole: boolean;
}

const LIMITS: readonly Limit[] = [
  { key: 'seed', low: 0, high: 4294967295, whole: true },
  { key: 'sections', low: 1, high: 40, whole: true },
  { key: 'observers', low: 1, high: 100, whole: true },
  { key: 'perSection', low: 1, high: 10, whole: true },
  { key: 'birds', low: 1, high: 1_000_000, whole: true },
  { key: 'bias', low: 0.1, high: 10, whole: false },
  { key: 'observerSpread', low: 0, high: 2, whole: false },
  { key: 'detection', low: 0.01, high: 1, whole: false },
  { key: 'error', low: 0, high: 5, whole: false },
  { key: 'misidentified', low: 0, high: 5, whole: false },
  { key: 'leftCoarse', low: 0, high: 2.5, whole: false },
  { key: 'placing', low: 0, high: 5, whole: false },
  { key: 'moving', low: 0, high: 1, whole: false },
  { key: 'slips', low: 0, high: 1, whole: false },
  { key: 'partial', low: 0, high: 1, whole: false },
  { key: 'merged', low: 0, high: 1, whole: false },
  { key: 'parties', low: 0, high: 1, whole: false },
  { key: 'timesNoted', low: 0, high: 1, whole: false },
  { key: 'positionsNoted', low: 0, high: 1, whole: false },
  { key: 'headingsNoted', low: 0, high: 1, whole: false },
  { key: 'destinationsNoted', low: 0, high: 1, whole: false },
  { key: 'pastTheLine', low: 0, high: 1, whole: false },
  { key: 'splitting', low: 0, high: 1, whole: false },
  { key: 'lumping', low: 0, high: 1, whole: false },
];

/** Stretches that the window can be cut into: at least 15 minutes each. */
const MOST_SLOTS = 12;

/** A wrong option, the sentence that says so. */
export interface OptionProblem {
  readonly key: keyof SimulationOptions;
  readonly text: string;
}

/** Everything wrong with the options, at once; an empty list if nothing is. */
export function problemsOf(options: SimulationOptions): OptionProblem[] {
  const problems: OptionProblem[] = LIMITS.flatMap(({ key, low, high, whole }) => {
    const value = options[key];
    const fits = value >= low && value <= high && (!whole || Number.isInteger(value));
    const kind = whole ? 'a whole number' : 'a number';
    return fits ? [] : [{ key, text: `must be ${kind} from ${low} to ${high}, not ${value}` }];
  });
  const { observers, perSection, sections } = options;
  if (perSection > observers) {
    const text = `must be no more than the ${observers} observers, not ${perSection}`;
    problems.push({ key: 'perSection', text });
  } else if (problems.length === 0 && slotsNeeded(sections, observers, perSection) > MOST_SLOTS) {
    const text = `must be more than ${observers}: nobody has time for all ${sections} sections`;
    problems.push({ key: 'observers', text });
  }
  return problems;
}
