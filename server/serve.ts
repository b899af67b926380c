import type { AddressInfo } from 'node:net';
import type { NestApplicationOptions } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { AppModule } from './app.module.js';
import { securityHeaders } from './api/security-headers.js';
import { serveWebFiles, WEB_FOLDER } from './api/web-files.js';
import { Database } from './database/database.js';
import { migrate } from './database/migrate.js';
import { loadDemo, refuseDemoDatabase, type DemoSignIn } from './demo.js';
import { makeFirstLeader } from './people/first-leader.js';

const NEST_OPTIONS: NestApplicationOptions = {
  bodyParser: false,
  forceCloseConnections: true,
  logger: ['error', 'warn'],
};

/** A whole count folder is sent in one request. */
const LARGEST_REQUEST = '5mb';

export interface ServeOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** The network address to listen on; by default this machine only. */
  readonly host?: string;
  /** `file:…`; made and migrated if need be. */
  readonly databaseUrl: string;
  /** Loads the invented scenario and prints its sign-ins, passwords included. */
  readonly demo: boolean;
  /** Gives this person a new password, and makes them a leader who may plan counts if they are new. */
  readonly firstLeader?: string | null;
  /** Where the address and sign-ins are told; by default the terminal. */
  readonly print?: (line: string) => void;
}

export interface RunningServer {
  readonly url: string;
  /** With `demo`: who can sign in, and how. */
  readonly signIns: readonly DemoSignIn[];
  /** Answers what is under way, then closes the database. Safe to call again. */
  close(): Promise<void>;
}

/**
 * Migrates the database, starts the server, and says where it is. SIGTERM and SIGINT close it.
 *
 * @throws Error that says what to do, where the database is not of the kind that was asked for
 */
export async function serve(options: ServeOptions): Promise<RunningServer> {
  const { port, host = '127.0.0.1', databaseUrl, demo, firstLeader, print = console.log } = options;
  await migrate(databaseUrl);
  const app = await NestFactory.create<NestExpressApplication>(AppModule, NEST_OPTIONS);
  app.useBodyParser('json', { limit: LARGEST_REQUEST });
  // A proxy on the same machine may say for whom it asks; nobody else may.
  app.set('trust proxy', 'loopback');
  app.disable('x-powered-by');
  app.use(securityHeaders);
  serveWebFiles(app.getHttpAdapter().getInstance(), WEB_FOLDER);
  const database = app.get(Database);
  await database.open(databaseUrl);
  try {
    if (!demo) await refuseDemoDatabase(database);
    const signIns = demo ? await loadDemo(database) : [];
    const password = firstLeader ? await makeFirstLeader(database, firstLeader) : null;
    await app.listen(port, host);
    const url = `http://${host === '127.0.0.1' ? 'localhost' : host}:${listeningPort(app)}`;
    for (const line of announcement(url, signIns)) print(line);
    if (firstLeader && password !== null)
      print(`${firstLeader} signs in with the password ${password}`);
    return { url, signIns, close: closing(app) };
  } catch (error) {
    await app.close();
    throw error;
  }
}

function listeningPort(app: NestExpressApplication): number {
  const address = app.getHttpServer().address() as AddressInfo;
  return address.port;
}

function closing(app: NestExpressApplication): () => Promise<void> {
  let closed: Promise<void> | undefined;
  const close = (): Promise<void> => {
    process.off('SIGTERM', onSignal);
    process.off('SIGINT', onSignal);
    closed ??= app.close();
    return closed;
  };
  const onSignal = (): void => {
    void close();
  };
  process.on('SIGTERM', onSignal);
  process.on('SIGINT', onSignal);
  return close;
}

function announcement(url: string, signIns: readonly DemoSignIn[]): string[] {
  const widest = (column: (one: DemoSignIn) => string): number =>
    Math.max(0, ...signIns.map((one) => column(one).length));
  const name = widest((one) => one.name);
  const role = widest((one) => one.roles);
  return [
    '',
    `Countersign is running: ${url}`,
    ...(signIns.length === 0
      ? []
      : ['', 'Sign-ins of the demonstration (people and places are invented):']),
    ...signIns.map((one) => {
      const how = one.password === null ? `${url}${one.path ?? ''}` : `password ${one.password}`;
      const note = one.note === null ? '' : `  (${one.note})`;
      return `  ${one.name.padEnd(name)}  ${one.roles.padEnd(role)}  ${how}${note}`;
    }),
    '',
    'Ctrl-C stops it.',
  ];
}
