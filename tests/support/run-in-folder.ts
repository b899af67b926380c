import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { runCommand } from '../../server/cli/command.js';

/** A folder of its own for each test of the file, removed after it; call once, at the top. */
export function folderForEachTest(): () => string {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'countersign-'));
  });
  afterEach(async () => {
    await rm(folder, { recursive: true, force: true });
  });
  return () => folder;
}

/** Runs the command as from a pipe: its exit code and what it wrote. */
export async function run(
  ...args: readonly string[]
): Promise<{ code: number | null; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await runCommand(args, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    terminal: false,
  });
  return { code, out, err };
}
