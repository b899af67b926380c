import path from 'node:path';
import { PROJECT_ROOT } from './project-root.js';
import type { ServeOptions } from './serve.js';

const USUAL_PORT = 4380;

/**
 * What the environment says about serving: PORT, HOST, DATABASE_URL (`file:…`), FIRST_LEADER.
 *
 * @throws Error that says what to do about a variable that cannot be used
 */
export function environment(
  variables: Readonly<Record<string, string | undefined>>,
): Required<Pick<ServeOptions, 'port' | 'host' | 'databaseUrl' | 'firstLeader'>> {
  return {
    port: portOf(variables['PORT']),
    host: variables['HOST'] ?? '127.0.0.1',
    databaseUrl: databaseUrl(variables['DATABASE_URL'], 'countersign.db'),
    firstLeader: variables['FIRST_LEADER'] ?? null,
  };
}

/** @param usual the file below .data/ that is taken where nothing is set */
export function databaseUrl(given: string | undefined, usual: string): string {
  if (given === undefined) return `file:${path.join(PROJECT_ROOT, '.data', usual)}`;
  if (given.startsWith('file:')) return given;
  throw new Error(
    `DATABASE_URL is ${JSON.stringify(given)}; it has to name a SQLite file, such as file:/var/lib/countersign/counts.db.`,
  );
}

function portOf(given: string | undefined): number {
  if (given === undefined) return USUAL_PORT;
  const port = Number(given);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new Error(`PORT is ${JSON.stringify(given)}; it has to be a whole number from 0 to 65535.`);
}
