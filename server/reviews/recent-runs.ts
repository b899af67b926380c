import { RunMemory } from '../core/memory.js';

/** Counts whose last run is kept in memory: what a programme has open at one time. */
const MOST_COUNTS = 8;

const byCount = new Map<string, RunMemory>();

/**
 * What the last run of a count worked out, so that after one tally or ruling only its own cells are
 * worked out again. It is no part of anybody's rights: a remembered value is found by the whole of
 * the input that it was made from.
 */
export function memoryOfRun(count: string): RunMemory {
  const memory = byCount.get(count) ?? new RunMemory();
  // Put back at the end, so that the first is the one that was not asked for the longest.
  byCount.delete(count);
  byCount.set(count, memory);
  const [oldest] = byCount.keys();
  if (byCount.size > MOST_COUNTS && oldest !== undefined) byCount.delete(oldest);
  memory.begin();
  return memory;
}
