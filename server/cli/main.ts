#!/usr/bin/env node
import { runCommand } from './command.js';

// A reader such as `head` may close early; that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

const code = await runCommand(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  terminal: process.stdout.isTTY,
});
// Not process.exit, which would cut off what is still being written.
if (code !== null) process.exitCode = code;
