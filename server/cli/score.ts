import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { reconcile } from '../core/reconcile.js';
import { scoreCount } from '../core/score/score.js';
import { readTruth } from '../exchange/read-truth.js';
import { loadFolder, sayFaults } from './check.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { scoreText } from './summary/score-text.js';

export const SCORE_FORMATS = ['text', 'json'] as const;

export interface ScoreOptions {
  readonly format: (typeof SCORE_FORMATS)[number];
}

/** `countersign score FOLDER`: a count reconciled without rulings and held against its truth. */
export async function scoreFolder(
  folder: string,
  { format }: ScoreOptions,
  streams: Streams,
): Promise<ExitCode> {
  const loaded = await loadFolder(folder, streams);
  if (!loaded.ok) return loaded.code;
  const { snapshot, protocol } = loaded.count;
  let content: Uint8Array;
  try {
    content = await readFile(path.join(folder, 'truth.json'));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    streams.err(`A score needs the truth, and truth.json could not be read: ${reason}.\n`);
    return EXIT.unreadable;
  }
  const truth = readTruth({ name: 'truth.json', content }, snapshot);
  if (!truth.ok) {
    sayFaults(truth.faults, streams.err);
    return EXIT.faults;
  }
  const result = reconcile(snapshot, [], protocol);
  const deducting = { ...protocol, deductLinks: 'proposed' as const };
  const deducted =
    protocol.deductLinks === 'proposed' ? result : reconcile(snapshot, [], deducting);
  const score = scoreCount(snapshot, protocol, result, truth.value, deducted);
  streams.out(format === 'json' ? `${JSON.stringify(score)}\n` : scoreText(score));
  return EXIT.clean;
}
