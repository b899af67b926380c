import { mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';
import { defaultProtocol } from '../core/model/default-protocol.js';
import type { Rule } from '../core/model/protocol.js';
import { DEFAULT_OPTIONS, problemsOf, type SimulationOptions } from '../core/simulate/options.js';
import { simulate } from '../core/simulate/simulate.js';
import { writeFolder } from '../exchange/write-folder.js';
import { writeTruth } from '../exchange/write-truth.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { writeWhole } from './write-output.js';

/** What the command line gives: numbers may be NaN, which `problemsOf` refuses. */
export type SimulateOptions = Partial<SimulationOptions> & {
  readonly out: string;
  readonly rule: Rule;
};

/** `countersign simulate`: a made-up count folder with its truth beside it. */
export async function simulateFolder(
  { out, rule, ...given }: SimulateOptions,
  streams: Streams,
): Promise<ExitCode> {
  const options: SimulationOptions = { ...DEFAULT_OPTIONS, ...given };
  const problems = problemsOf(options);
  for (const { key, text } of problems) streams.err(`--${optionName(key)} ${text}.\n`);
  if (problems.length > 0) return EXIT.faults;
  const refusal = await whyNotInto(out);
  if (refusal !== null) {
    streams.err(`${refusal}\n`);
    return EXIT.unreadable;
  }
  const protocol = { ...defaultProtocol, rule };
  const { snapshot, truth } = simulate(options, protocol);
  const files = [...writeFolder(snapshot, protocol), ...writeTruth(truth, options)];
  try {
    await mkdir(out, { recursive: true });
    for (const { name, text } of files) await writeWhole(path.join(out, name), text);
  } catch (error) {
    streams.err(`${out} could not be written: ${messageOf(error)}.\n`);
    return EXIT.unreadable;
  }
  const lines = snapshot.tallies.reduce((sum, tally) => sum + tally.lines.length, 0);
  streams.out(
    `${out}: ${options.birds} birds on ${options.sections} sections, ` +
      `${snapshot.tallies.length} tallies, ${lines} lines.\n`,
  );
  return EXIT.clean;
}

/** `perSection` is given as `--per-section`. */
function optionName(key: keyof SimulationOptions): string {
  return key.replaceAll(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`);
}

/** A count that is there already is never written over. */
async function whyNotInto(folder: string): Promise<string | null> {
  try {
    const there = await readdir(folder);
    return there.length === 0
      ? null
      : `${folder} is not empty. Give a new folder, or empty this one first.`;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    if (code === 'ENOENT') return null;
    return `${folder} cannot be used as a folder: ${messageOf(error)}.`;
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
