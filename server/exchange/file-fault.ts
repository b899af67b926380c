import type { Fault } from '../core/model/fault.js';
import { type Saying } from '../core/model/saying.js';

/** A fault of a file as a whole, or of one of its rows. */
export function fileFault(
  file: string,
  code: string,
  problem: Saying,
  expected: Saying,
  row: number | null = null,
): Fault {
  return { code, file, row, column: null, value: null, problem, expected, nearest: null };
}
