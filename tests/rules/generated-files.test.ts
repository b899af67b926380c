import { expect, test } from 'vitest';
import { runCommand } from '../../server/toolchain/run-command.mjs';

test('the committed generated files are what the contract gives', async () => {
  const { code, output } = await runCommand(process.execPath, ['server/generate.mjs', '--check']);
  expect(output).toBe('');
  expect(code).toBe(0);
});
