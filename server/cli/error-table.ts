import { pairedCounts } from '../core/estimate/paired-counts.js';
import {
  reEstimateCountingError,
  type ReEstimatedErrors,
} from '../core/estimate/re-estimate-counting-error.js';
import type { CheckedCount } from '../core/model/check-count.js';
import type { Protocol } from '../core/model/protocol.js';
import { loadFolder } from './check.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { errorTableText } from './summary/error-table.js';

export const ERROR_TABLE_FORMATS = ['text', 'json'] as const;

export interface ErrorTableOptions {
  readonly format: (typeof ERROR_TABLE_FORMATS)[number];
}

/**
 * `countersign error-table FOLDER…`: the counting error that the protocol has, and the one that the
 * paired tallies of these counts show, side by side. Steps are those of the first count's protocol.
 */
export async function errorTable(
  folders: readonly string[],
  { format }: ErrorTableOptions,
  streams: Streams,
): Promise<ExitCode> {
  const counts: Extract<CheckedCount, { ok: true }>[] = [];
  for (const folder of folders) {
    const loaded = await loadFolder(folder, streams);
    if (!loaded.ok) return loaded.code;
    counts.push(loaded.count);
  }
  const [first] = counts;
  if (first === undefined) return EXIT.unreadable;
  if (counts.some(({ protocol }) => !sameTable(protocol, first.protocol))) {
    streams.err(
      `Note: the counts differ in their tables; the steps are those of ${folders[0] ?? ''}.\n`,
    );
  }
  const errors = reEstimateCountingError(pairedCounts(counts), first.protocol);
  streams.out(
    format === 'json'
      ? `${JSON.stringify(errors)}\n`
      : written(errors, first.protocol, counts.length),
  );
  return EXIT.clean;
}

function written(errors: ReEstimatedErrors, { minimumUnits }: Protocol, counts: number): string {
  return `${errorTableText(errors, minimumUnits, counts).join('\n')}\n`;
}

function sameTable(one: Protocol, other: Protocol): boolean {
  return JSON.stringify(one.countingError) === JSON.stringify(other.countingError);
}
