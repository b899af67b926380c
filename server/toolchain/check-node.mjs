// Imported first by `npm start` and `npm test`: an old Node would otherwise fail somewhere inside
// with a message about syntax. Uses nothing that an old Node lacks.
import { readFileSync } from 'node:fs';

const { engines } = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
);
const needed = engines.node.replace('>=', '');
const [neededMajor = 0, neededMinor = 0] = needed.split('.').map(Number);
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

if (major < neededMajor || (major === neededMajor && minor < neededMinor)) {
  console.error(
    `Countersign needs Node.js ${needed} or newer, and this is ${process.versions.node}. ` +
      'Install a newer Node.js (https://nodejs.org) and run the same command again.',
  );
  process.exit(1);
}
