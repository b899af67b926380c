// Builds into dist/ what is out of date: generated code, the server (dist/server), the web app
// (dist/web). `npm run build`; with `--quiet` it says nothing unless it fails.
import { cpSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { filesBelow, root, runIfStale } from './toolchain/freshness.mjs';
import { generate } from './generate.mjs';
import { runCommand } from './toolchain/run-command.mjs';

const compiledFolder = path.join(root, 'dist/server');

/**
 * Files that the running server reads as they are (GraphQL schema, data), which the compiler leaves
 * behind.
 *
 * @param {string} file
 */
function isReadAtRunTime(file) {
  return !/\.(ts|mjs)$/.test(file) && !file.endsWith('tsconfig.json');
}

/**
 * Compiles into a folder beside the present one and changes them over at the end: nothing is left of
 * files that are gone, and a failed build leaves the earlier one whole.
 */
async function buildServer() {
  const fresh = path.join(root, 'dist/server-in-the-making');
  rmSync(fresh, { recursive: true, force: true });
  const { code, output } = await runCommand(process.execPath, [
    path.join(root, 'node_modules/typescript/bin/tsc'),
    ...['-p', 'server', '--outDir', fresh],
  ]);
  if (code !== 0) throw new Error(`The server does not compile:\n${output}`);
  for (const file of filesBelow('server').filter(isReadAtRunTime)) {
    cpSync(path.join(root, file), path.join(fresh, path.relative('server', file)));
  }
  rmSync(compiledFolder, { recursive: true, force: true });
  renameSync(fresh, compiledFolder);
}

async function buildWeb() {
  const { code, output } = await runCommand(process.execPath, [
    path.join(root, 'node_modules/vite/bin/vite.js'),
    ...['build', '-c', 'web/vite.config.ts', '--logLevel', 'warn'],
  ]);
  if (code !== 0) throw new Error(`The web app does not build:\n${output}`);
}

/**
 * @param {(line: string) => void} say is told what was made
 * @param {{ only?: 'server' | 'web app' }} [options] `only` one of the two, where the other is not
 *   needed
 * @throws an Error with the tool's own output if a step fails
 */
export async function build(say, { only } = {}) {
  await generate(say);
  const server = {
    name: 'server',
    inputs: [...filesBelow('server'), 'package-lock.json'],
    outputs: 'dist/server',
    make: buildServer,
  };
  const web = {
    name: 'web app',
    inputs: [...filesBelow('web'), ...filesBelow('server/core'), 'package-lock.json'],
    outputs: 'dist/web',
    make: buildWeb,
  };
  const steps = [server, web].filter(({ name }) => only === undefined || name === only);
  const outcomes = await Promise.allSettled(
    steps.map(async (step) => {
      if (await runIfStale(step)) say(`made: ${step.name} (${step.outputs})`);
    }),
  );
  const failures = outcomes.flatMap((outcome) =>
    outcome.status === 'rejected' ? [outcome.reason.message] : [],
  );
  if (failures.length > 0) {
    throw new Error(failures.join('\n'));
  }
}

if (process.argv[1] === import.meta.filename) {
  const isQuiet = process.argv.includes('--quiet');
  build(isQuiet ? () => {} : console.log).catch((error) => {
    console.error(error.message);
    process.exitCode = 1;
  });
}
