// Tells whether a step (generate, build) has to run again: it has when its input files, or what it
// wrote the last time, are no longer the same bytes.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** The checkout's top folder; every path below is relative to it. */
export const root = path.resolve(import.meta.dirname, '../..');

/** Below node_modules, so that a new installation forgets everything that was made with the old one. */
const recordFolder = path.join(root, 'node_modules/.cache/countersign');

/**
 * All files at or below a path, sorted, relative to the checkout; empty if there is nothing.
 *
 * @param {string} place a file or folder, relative to the checkout
 * @returns {string[]}
 */
export function filesBelow(place) {
  const start = path.join(root, place);
  if (!existsSync(start)) return [];
  if (statSync(start).isFile()) return [place];
  return readdirSync(start, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)))
    .sort();
}

/** @param {string[]} files relative to the checkout */
function fingerprint(files) {
  const hash = createHash('sha256');
  for (const file of files) {
    const content = readFileSync(path.join(root, file));
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}

/**
 * Runs a step unless its inputs and outputs are as the step left them the last time. A step that
 * throws leaves no record, so it runs again. Several programs may ask for the same step at once: one
 * makes it while the others wait.
 *
 * @param {{ name: string, inputs: string[], outputs: string, make: () => unknown }} step
 *   `inputs` are files, `outputs` is the folder that the step writes
 * @returns {Promise<boolean>} whether it had to run
 */
export async function runIfStale({ name, inputs, outputs, make }) {
  const record = path.join(recordFolder, name);
  const isFresh = () =>
    existsSync(record) &&
    readFileSync(record, 'utf8') === `${fingerprint(inputs)} ${fingerprint(filesBelow(outputs))}`;
  if (isFresh()) return false;
  mkdirSync(recordFolder, { recursive: true });
  // Loaded only here: this file is also read before anything is installed.
  const { oneAtATime } = await import('./one-at-a-time.mjs');
  return oneAtATime(`${record}.lock`, async () => {
    if (isFresh()) return false;
    // Read before the step runs: what is edited meanwhile makes it stale again.
    const made = fingerprint(inputs);
    await make();
    writeFileSync(record, `${made} ${fingerprint(filesBelow(outputs))}`);
    return true;
  });
}
