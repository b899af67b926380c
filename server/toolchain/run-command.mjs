// Runs a command and waits for it; its output is shown as it comes, or kept for the error.
import { spawn } from 'node:child_process';
import { root } from './freshness.mjs';

/**
 * @param {string} command
 * @param {string[]} args
 * @param {{ show?: boolean, env?: Record<string, string> }} [options] `show` passes the output on to
 *   the terminal; otherwise it is collected
 * @returns {Promise<{ code: number, output: string }>} exit code (1 if a signal ended it), and what
 *   was collected from both streams
 * @throws an Error if the command cannot be started
 */
export function runCommand(command, args, { show = false, env = {} } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: show ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.setEncoding('utf8').on('data', (text) => (output += text));
    }
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * Runs npm: the one that started us if there is one, so that its version and settings are kept.
 *
 * @param {string[]} args
 * @param {Parameters<typeof runCommand>[2]} [options]
 */
export function runNpm(args, options) {
  const npm = process.env.npm_execpath;
  if (npm) return runCommand(process.execPath, [npm, ...args], options);
  return runCommand(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, options);
}
