// `npm start`: from a fresh clone to a running server with the demonstration count. Installs, builds,
// then hands over to `countersign serve --demo`, which makes its database below .data/, loads the
// scenario if there is none yet, and prints the address and the sign-ins.
//
// PORT chooses the port (4380 unless set). Options after `--` go to `countersign serve`.
import './toolchain/check-node.mjs';
import { createServer } from 'node:net';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from './build.mjs';
import { root } from './toolchain/freshness.mjs';
import { ensureInstalled } from './toolchain/install.mjs';

const usualPort = 4380;

/** @param {number} port */
function isFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(false));
    probe.listen(port, process.env.HOST || '127.0.0.1', () => probe.close(() => resolve(true)));
  });
}

/**
 * The port to serve on. One that was asked for is taken or refused; the usual one gives way to the
 * next that is free.
 */
async function choosePort() {
  const asked = process.env.PORT;
  if (asked !== undefined) {
    const port = Number(asked);
    if (!Number.isInteger(port) || port < 1 || port > 65535) {
      throw new Error(`PORT is ${JSON.stringify(asked)}; it has to be a number from 1 to 65535.`);
    }
    if (await isFree(port)) return port;
    throw new Error(
      `Port ${port} is taken by another program. Stop that one, or choose another port: ` +
        `PORT=${port + 1} npm start`,
    );
  }
  for (let port = usualPort; port < usualPort + 20; port += 1) {
    if (!(await isFree(port))) continue;
    if (port !== usualPort)
      console.log(`Port ${usualPort} is taken by another program; using ${port}.`);
    return port;
  }
  throw new Error(
    `Ports ${usualPort} to ${usualPort + 19} are all taken. Choose one that is free: PORT=8080 npm start`,
  );
}

/**
 * Runs the server in this process, so that Ctrl-C and the signals of a process manager reach it.
 *
 * @param {number} port
 */
async function serve(port) {
  process.setSourceMapsEnabled(true);
  process.env.PORT = String(port);
  process.argv.splice(2, 0, 'serve', '--demo');
  await import(pathToFileURL(path.join(root, 'dist/server/cli/main.js')).href);
}

try {
  await ensureInstalled();
  await build(console.log);
  await serve(await choosePort());
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
