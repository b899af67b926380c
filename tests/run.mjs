// `npm test`: everything, from a fresh clone. Each step is named with its time, a failure does not
// keep the later steps from running, and the last line counts what passed and failed: each static
// check as one, and each test.
import '../server/toolchain/check-node.mjs';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureInstalled } from '../server/toolchain/install.mjs';
import { runCommand, runNpm } from '../server/toolchain/run-command.mjs';
import { findChromium } from './support/find-chromium.mjs';

const staticChecks = [
  { name: 'build', script: 'build' },
  { name: 'formatting', script: 'format' },
  { name: 'lint', script: 'lint' },
  { name: 'types', script: 'typecheck' },
  { name: 'dependency direction', script: 'depend' },
  { name: 'unused code', script: 'unused' },
];

const count = { passed: 0, failed: 0, skipped: 0 };

/** @param {number} start as performance.now() gave it */
function secondsSince(start) {
  return `${((performance.now() - start) / 1000).toFixed(1)} s`;
}

/** Debian and its kin, as root (a container): the package is there for the asking. */
async function installChromium() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  console.log('No Chromium for the browser tests; installing the Debian package …');
  const quiet = { env: { DEBIAN_FRONTEND: 'noninteractive' } };
  await runCommand('apt-get', ['update'], quiet);
  const { code, output } = await runCommand('apt-get', ['install', '-y', 'chromium'], quiet);
  if (code !== 0) console.log(output.trimEnd().split('\n').slice(-5).join('\n'));
}

async function provideChromium() {
  if (!findChromium()) await installChromium();
  const chromium = findChromium();
  console.log(
    chromium
      ? `Browser tests run in ${chromium}.`
      : 'There is no Chromium here, so the browser tests are SKIPPED. Install one, or set CHROMIUM_PATH.',
  );
}

/** @param {{ name: string, script: string }} check a script of package.json */
async function runStaticCheck({ name, script }) {
  const start = performance.now();
  const { code, output } = await runNpm(['run', '--silent', script]);
  const passed = code === 0;
  count[passed ? 'passed' : 'failed'] += 1;
  console.log(`${passed ? 'ok    ' : 'FAILED'} ${name} (${secondsSince(start)})`);
  if (!passed) console.log(output.trimEnd());
}

/**
 * Adds what Vitest's JSON report says to the count.
 *
 * @param {string} report path of the file
 */
function countTests(report) {
  if (!existsSync(report)) return;
  const result = JSON.parse(readFileSync(report, 'utf8'));
  count.passed += result.numPassedTests;
  count.failed += result.numFailedTests;
  count.skipped += result.numPendingTests + result.numTodoTests;
  // A file that could not even be loaded has no tests to count; it is one failure.
  for (const file of result.testResults) {
    if (file.status === 'failed' && file.assertionResults.length === 0) count.failed += 1;
  }
}

async function runTests() {
  const start = performance.now();
  const folder = mkdtempSync(path.join(tmpdir(), 'countersign-tests-'));
  const report = path.join(folder, 'report.json');
  const before = { ...count };
  console.log('tests');
  const { code } = await runCommand(
    process.execPath,
    [
      'node_modules/vitest/vitest.mjs',
      ...['run', '-c', 'tests/vitest.config.ts'],
      ...['--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    ],
    { show: true },
  );
  countTests(report);
  rmSync(folder, { recursive: true });
  // Vitest also fails for what belongs to no test, such as a promise that nobody awaited.
  const hasTests = count.passed > before.passed;
  if ((code !== 0 || !hasTests) && count.failed === before.failed) count.failed += 1;
  console.log(
    `${count.failed === before.failed ? 'ok    ' : 'FAILED'} tests (${secondsSince(start)})`,
  );
}

/**
 * Anything that keeps a step from running at all is a failure like any other, and is counted.
 *
 * @param {() => Promise<unknown>} step
 */
async function attempt(step) {
  try {
    await step();
  } catch (error) {
    count.failed += 1;
    console.error(error instanceof Error ? error.message : error);
  }
}

await attempt(ensureInstalled);
await attempt(provideChromium);
for (const check of staticChecks) await attempt(() => runStaticCheck(check));
await attempt(runTests);

const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : '';
console.log(`${count.passed} passed, ${count.failed} failed${skipped}`);
process.exitCode = count.failed > 0 ? 1 : 0;
