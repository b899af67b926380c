import { countingErrorOf, logDeviation } from '../compare/counting-error.js';
import type { Protocol } from '../model/protocol.js';
import type { Method } from '../model/snapshot.js';
import type { Chance } from './chance.js';
import {
  BLOCK,
  ONE_BY_ONE_TO,
  QUICK_BLOCK,
  QUICK_GUESS_FROM,
  QUICK_ONE_BY_ONE_TO,
  SAMPLE_SIZE,
} from './model.js';
import type { Habit, Observer } from './observer.js';

/** What is written down for some true birds. */
export interface Written {
  readonly number: number;
  readonly method: Method;
  readonly block: number | null;
  /** Of the birds of a proportion sample, those of this line; `null` where none was taken. */
  readonly sampled: number | null;
}

/**
 * Counts the birds of one line.
 *
 * @param error multiplies the protocol's coefficient of variation; with 0 the number is true
 */
export function countBirds(
  birds: number,
  observer: Observer,
  error: number,
  protocol: Protocol,
  chance: Chance,
): Written {
  const { method, block } = methodFor(birds, observer.habit);
  const number = withError(birds, method, observer, error, protocol, chance);
  const written = error === 0 ? birds : asWritten(number, method, block);
  return { number: written, method, block, sampled: null };
}

/**
 * Counts a raft by a proportion sample: its total with the error of the method, and each line's
 * share from birds named at random. A line that no bird of the sample belongs to gets 0.
 */
export function sampleRaft(
  lines: readonly number[],
  observer: Observer,
  error: number,
  protocol: Protocol,
  chance: Chance,
): Written[] {
  const all = lines.reduce((sum, birds) => sum + birds, 0);
  const total = withError(all, 'sample', observer, error, protocol, chance);
  const weights = lines.map((birds, index) => [birds, index] as const);
  const sample = Array.from({ length: SAMPLE_SIZE }, () => chance.oneOf(weights));
  return lines.map((birds, index) => {
    const sampled = sample.filter((drawn) => drawn === index).length;
    const number = error === 0 ? birds : Math.round((total * sampled) / SAMPLE_SIZE);
    return { number, method: 'sample', block: null, sampled };
  });
}

/** Rafts of several lines that an observer of the sampling habit would sample. */
export function isSampled(lines: readonly number[], habit: Habit): boolean {
  const all = lines.reduce((sum, birds) => sum + birds, 0);
  return habit === 'sampling' && lines.length > 1 && all > ONE_BY_ONE_TO;
}

function methodFor(birds: number, habit: Habit): Pick<Written, 'method' | 'block'> {
  const quick = habit === 'quick';
  if (birds <= (quick ? QUICK_ONE_BY_ONE_TO : ONE_BY_ONE_TO)) {
    return { method: 'one-by-one', block: null };
  }
  if (quick && birds >= QUICK_GUESS_FROM) return { method: 'guess', block: null };
  return { method: 'block', block: quick ? QUICK_BLOCK : BLOCK };
}

function withError(
  birds: number,
  method: Method,
  observer: Observer,
  error: number,
  protocol: Protocol,
  chance: Chance,
): number {
  const variation = error * countingErrorOf(birds, method, protocol);
  if (variation === 0) return birds;
  return birds * observer.ratio * Math.exp(logDeviation(variation) * chance.normal());
}

/** At least one: there was something to write down. */
function asWritten(number: number, method: Method, block: number | null): number {
  const step =
    method === 'guess'
      ? 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, number))) - 1)
      : (block ?? 5) / 5;
  return Math.max(1, Math.round(number / step) * step);
}
