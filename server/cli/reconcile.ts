import { readFile } from 'node:fs/promises';
import { styleText } from 'node:util';
import { checkRulings } from '../core/model/check-rulings.js';
import type { Fault } from '../core/model/fault.js';
import type { Result } from '../core/model/result.js';
import type { Ruling } from '../core/model/ruling.js';
import { ENGLISH } from '../core/model/saying.js';
import type { Snapshot } from '../core/model/snapshot.js';
import { wordedResult } from '../core/model/worded-result.js';
import { reconcile } from '../core/reconcile.js';
import { Refusal } from '../core/refusal.js';
import { compiledCsv } from '../exchange/compiled-csv.js';
import { readJson } from '../exchange/read-json.js';
import { loadFolder, sayFaults } from './check.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { summaryText } from './summary/summary.js';
import { writeWhole } from './write-output.js';

export const OUTPUT_FORMATS = ['json', 'csv', 'text'] as const;
export type OutputFormat = (typeof OUTPUT_FORMATS)[number];

export interface ReconcileOptions {
  readonly rulings?: string;
  readonly out?: string;
  readonly format: OutputFormat;
}

/** `countersign reconcile FOLDER`: the whole core on one folder. */
export async function reconcileFolder(
  folder: string,
  options: ReconcileOptions,
  streams: Streams,
): Promise<ExitCode> {
  const loaded = await loadFolder(folder, streams);
  if (!loaded.ok) return loaded.code;
  const { snapshot, protocol } = loaded.count;
  const rulings = await loadRulings(options.rulings, snapshot, streams);
  if (!rulings.ok) return rulings.code;
  let result: Result<string>;
  try {
    result = wordedResult(reconcile(snapshot, rulings.value, protocol), ENGLISH);
  } catch (error) {
    // Rulings that contradict one another: the person who wrote them can mend that.
    if (!(error instanceof Refusal)) throw error;
    streams.err(`${error.message}\n`);
    return EXIT.faults;
  }
  const text = written(result, snapshot, options, streams);
  if (options.out === undefined) {
    streams.out(text);
    return EXIT.clean;
  }
  try {
    await writeWhole(options.out, text);
  } catch (error) {
    streams.err(`${options.out} could not be written: ${messageOf(error)}.\n`);
    return EXIT.unreadable;
  }
  return EXIT.clean;
}

function written(
  result: Result<string>,
  snapshot: Snapshot,
  { format, out }: ReconcileOptions,
  { terminal }: Streams,
): string {
  switch (format) {
    case 'json':
      return `${JSON.stringify(result)}\n`;
    case 'csv':
      return compiledCsv(result);
    case 'text': {
      const plain = (text: string): string => text;
      const bold = (text: string): string => styleText('bold', text);
      return summaryText(result, snapshot, {
        heading: terminal && out === undefined ? bold : plain,
      });
    }
  }
}

async function loadRulings(
  file: string | undefined,
  snapshot: Snapshot,
  streams: Streams,
): Promise<
  | { readonly ok: true; readonly value: readonly Ruling[] }
  | { readonly ok: false; readonly code: ExitCode }
> {
  if (file === undefined) return { ok: true, value: [] };
  let content: Uint8Array;
  try {
    content = await readFile(file);
  } catch (error) {
    streams.err(`The rulings could not be read from ${file}: ${messageOf(error)}.\n`);
    return { ok: false, code: EXIT.unreadable };
  }
  const faults: Fault[] = [];
  const { value } = readJson({ name: file, content }, faults);
  const checked = faults.length > 0 ? null : checkRulings(value, snapshot, file);
  if (checked?.ok === true) return checked;
  sayFaults(checked?.faults ?? faults, streams.err);
  return { ok: false, code: EXIT.faults };
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
