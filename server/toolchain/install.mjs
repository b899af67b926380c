// Installs the npm packages if they are missing or not those of package-lock.json.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './freshness.mjs';
import { runNpm } from './run-command.mjs';

/**
 * @param {string} lockFile
 * @returns {Record<string, { version: string, optional?: boolean }>} packages by where they lie
 */
function packagesOf(lockFile) {
  return JSON.parse(readFileSync(path.join(root, lockFile), 'utf8')).packages;
}

/** Compares package-lock.json with npm's own record of what it installed. */
function isInstalled() {
  const record = 'node_modules/.package-lock.json';
  if (!existsSync(path.join(root, record))) return false;
  const installed = packagesOf(record);
  return Object.entries(packagesOf('package-lock.json')).every(([place, wanted]) => {
    if (place === '') return true;
    const found = installed[place];
    // npm leaves optional packages out that are made for other systems.
    return found ? found.version === wanted.version : wanted.optional === true;
  });
}

/**
 * @returns {Promise<boolean>} whether it had to install
 * @throws an Error that says what to do, if npm fails
 */
export async function ensureInstalled() {
  if (isInstalled()) return false;
  console.log('Installing the packages that package-lock.json names (a minute or two) …');
  const { code } = await runNpm(['ci', '--no-audit', '--no-fund'], { show: true });
  if (code !== 0) {
    throw new Error(
      'npm could not install the packages; its own message is above. It needs to reach an npm ' +
        'registry, and, where no ready-made better-sqlite3 fits this system, a C++ compiler, make ' +
        'and Python 3. Then run the same command again.',
    );
  }
  return true;
}
