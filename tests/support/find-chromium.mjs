import { accessSync, constants } from 'node:fs';
import path from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** @param {string} file */
function isExecutable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Where the browser for the browser tests is: CHROMIUM_PATH if that is set, else the first of the
 * usual names on the PATH.
 *
 * @returns {string | undefined} undefined where there is none; browser tests are then skipped
 * @throws an Error if CHROMIUM_PATH names nothing that can be run, rather than skipping silently
 */
export function findChromium() {
  const chosen = process.env['CHROMIUM_PATH'];
  if (chosen) {
    if (isExecutable(chosen)) return chosen;
    throw new Error(`CHROMIUM_PATH is ${chosen}, and no program is there. Correct or unset it.`);
  }
  const folders = (process.env['PATH'] ?? '').split(path.delimiter);
  return names
    .flatMap((name) => folders.map((folder) => path.join(folder, name)))
    .find(isExecutable);
}
