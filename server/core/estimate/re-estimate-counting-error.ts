import { chiSquaredQuantile } from '../math/chi-squared.js';
import { zOfLevel } from '../math/normal.js';
import { sum } from '../math/sum.js';
import type { CountingErrorTable, Protocol } from '../model/protocol.js';
import { METHODS, type Method } from '../model/snapshot.js';
import type { PairedCount } from './paired-counts.js';
import { varianceComponents, type Source, type VarianceComponents } from './variance-components.js';

/** One step of the protocol's table, and what paired tallies say of it. */
export interface ErrorTableRow {
  readonly method: Method;
  /** Birds on a line up to which the step goes; `null` for the last. */
  readonly upTo: number | null;
  /** Coefficient of variation in the protocol. */
  readonly protocol: number;
  /** Groups of birds, counted by two or more, that say something of it. */
  readonly groups: number;
  /** Coefficient of variation from paired tallies with a 95 % interval; `null` if it cannot be told. */
  readonly cv: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** `too-few`: groups, fewer than the protocol asks. `not-told-apart`: counted only against one other. */
  readonly missing: 'too-few' | 'not-told-apart' | null;
}

export interface ReEstimatedErrors {
  readonly rows: readonly ErrorTableRow[];
  /** The part of every row that goes with the observer; `null` with under three observers. */
  readonly betweenObservers: number | null;
  readonly observers: number;
  readonly groups: number;
}

/** Below this many observers their own spread is left in that of the methods. */
const FEWEST_OBSERVERS = 3;
const LEVEL = 0.95;

/**
 * Counting error by method and size of flock from a survey's own paired tallies: variance components
 * of ln totals, ln n = group + observer + error by method and size, by restricted maximum likelihood
 * (see `variance-components.ts`). A row's error is what one count by that method is off: the
 * observer's part and the method's own.
 *
 * - A total of several lines has each line's error in proportion to its share of the birds, squared.
 * - Intervals are Satterthwaite's (1946, Biometrics Bull. 2:110) for a sum of components.
 * - Steps with fewer groups than the protocol's `minimumUnits` have no value, and counts that rest
 *   on them say nothing of others. Nor have steps that only ever met each other.
 * - What all observers miss alike is not in it. Of small flocks, birds that one did not see are.
 *
 * @param protocol whose steps are estimated, its own numbers beside
 */
export function reEstimateCountingError(
  counts: readonly PairedCount[],
  protocol: Protocol,
): ReEstimatedErrors {
  const steps = stepsOf(protocol.countingError);
  const usable = counts.map((count) => ({ ...count, ...weighed(count, steps) }));
  const missing = new Map<number, 'too-few' | 'not-told-apart'>();
  const groupsOf = steps.map((_, step) => groupsAbout(usable, step));
  let kept = inPairs(usable);
  for (;;) {
    const few = steps.flatMap((_, step) =>
      !missing.has(step) && groupsAbout(kept, step) < protocol.minimumUnits ? [step] : [],
    );
    for (const step of few) missing.set(step, 'too-few');
    kept = without(kept, few);
    const open = steps.flatMap((_, step) => (missing.has(step) ? [] : [step]));
    if (few.length > 0 && open.length > 0) continue;
    const fit = open.length === 0 ? null : fitted(kept, open);
    const inseparable = open.filter((_, place) => fit?.components.inseparable[place] === true);
    for (const step of inseparable) missing.set(step, 'not-told-apart');
    kept = without(kept, inseparable);
    if (inseparable.length > 0) continue;
    return {
      rows: steps.map(({ method, upTo, cv }, step) => ({
        method,
        upTo,
        protocol: cv,
        groups: groupsOf[step] ?? 0,
        ...(fit === null || missing.has(step)
          ? { cv: null, low: null, high: null }
          : errorOf(fit, open.indexOf(step))),
        missing: missing.get(step) ?? null,
      })),
      betweenObservers:
        fit?.observer === undefined || fit.observer === null
          ? null
          : cvOf(fit.components.variances[fit.observer] ?? 0),
      observers: new Set(kept.map(({ observer }) => observer)).size,
      groups: new Set(kept.map(({ group }) => group)).size,
    };
  }
}

interface Step {
  readonly method: Method;
  readonly above: number;
  readonly upTo: number | null;
  readonly cv: number;
}

function stepsOf(table: CountingErrorTable): Step[] {
  return METHODS.flatMap((method) =>
    table[method].map(({ upTo, cv }, index) => ({
      method,
      above: table[method][index - 1]?.upTo ?? 0,
      upTo,
      cv,
    })),
  );
}

interface Weighed extends PairedCount {
  readonly total: number;
  /** How much of each step's variance the ln total has: the lines' shares of it, squared. */
  readonly weights: readonly number[];
}

function weighed(
  { lines }: PairedCount,
  steps: readonly Step[],
): Pick<Weighed, 'total' | 'weights'> {
  const total = lines.reduce((running, { number }) => running + number, 0);
  const weights = steps.map(({ method, above, upTo }) =>
    sum(
      lines
        .filter((line) => line.method === method)
        .filter(({ number }) => number > above && (upTo === null || number <= upTo))
        .map(({ number }) => (number / total) ** 2),
    ),
  );
  return { total, weights };
}

/** Groups in which some count rests on a step for most of its error. */
function groupsAbout(counts: readonly Weighed[], step: number): number {
  const about = counts.filter(({ weights }) => (weights[step] ?? 0) > sum(weights) / 2);
  return new Set(about.map(({ group }) => group)).size;
}

/** Counts that have nothing to do with these steps, as far as they still meet another. */
function without(counts: readonly Weighed[], steps: readonly number[]): Weighed[] {
  return inPairs(counts.filter(({ weights }) => steps.every((step) => (weights[step] ?? 0) === 0)));
}

function inPairs(counts: readonly Weighed[]): Weighed[] {
  const times = new Map<string, number>();
  for (const { group } of counts) times.set(group, (times.get(group) ?? 0) + 1);
  return counts.filter(({ group }) => (times.get(group) ?? 0) > 1);
}

interface Fit {
  readonly components: VarianceComponents;
  /** Place of the observers' component; `null` where it is not apart. */
  readonly observer: number | null;
}

function fitted(counts: readonly Weighed[], open: readonly number[]): Fit {
  const values = counts.map(({ total }) => Math.log(total));
  const blocks = counts.map(({ group }) => group);
  const errors: Source[] = open.map((step) => ({
    weights: counts.map(({ weights }) => weights[step] ?? 0),
  }));
  const levels = counts.map(({ observer }) => observer);
  const alone = (): Fit => ({
    components: varianceComponents(values, blocks, errors),
    observer: null,
  });
  if (new Set(levels).size < FEWEST_OBSERVERS) return alone();
  const components = varianceComponents(values, blocks, [...errors, { levels }]);
  const observer = errors.length;
  return components.inseparable[observer] === true ? alone() : { components, observer };
}

/** What one count of a step is off: its own component and the observers', with an interval. */
function errorOf(
  { components, observer }: Fit,
  place: number,
): Pick<ErrorTableRow, 'cv' | 'low' | 'high'> {
  const { variances, covariances } = components;
  const parts = observer === null ? [place] : [place, observer];
  const variance = sum(parts.map((part) => variances[part] ?? 0));
  if (covariances === null) return { cv: cvOf(variance), low: null, high: null };
  const ofEstimate = sum(parts.flatMap((i) => parts.map((j) => covariances[i]?.[j] ?? 0)));
  const degrees = (2 * variance ** 2) / ofEstimate;
  // With less than one degree of freedom the chi-squared form breaks down: the estimate is near none.
  if (degrees < 1) {
    const high = variance + zOfLevel(LEVEL) * Math.sqrt(ofEstimate);
    return { cv: cvOf(variance), low: 0, high: cvOf(high) };
  }
  const end = (p: number): number => cvOf((degrees * variance) / chiSquaredQuantile(p, degrees));
  return { cv: cvOf(variance), low: end((1 + LEVEL) / 2), high: end((1 - LEVEL) / 2) };
}

/** The coefficient of variation of a log-normal number with this variance of its logarithm. */
function cvOf(variance: number): number {
  return Math.sqrt(Math.expm1(variance));
}
