import { databaseUrl, environment } from '../environment.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';

// The server and its database are loaded only when they are asked for: checking and reconciling a
// folder need neither.

/** `countersign serve`: runs until it is told to stop; PORT, HOST, DATABASE_URL and FIRST_LEADER hold. */
export async function serveUntilStopped(
  options: { readonly demo: boolean },
  streams: Streams,
): Promise<ExitCode | null> {
  try {
    const settings = environment(process.env);
    const { serve } = await import('../serve.js');
    await serve({
      ...settings,
      // A demonstration has a database of its own, so that it never mixes with real counts.
      databaseUrl: options.demo
        ? databaseUrl(process.env['DATABASE_URL'], 'demo.db')
        : settings.databaseUrl,
      demo: options.demo,
      print: (line) => streams.out(`${line}\n`),
    });
    return null;
  } catch (error) {
    streams.err(`The server could not start: ${messageOf(error)}\n`);
    return EXIT.unreadable;
  }
}

/** `countersign migrate`: brings the database of DATABASE_URL up to date. */
export async function migrateDatabase(streams: Streams): Promise<ExitCode> {
  try {
    const url = environment(process.env).databaseUrl;
    const { migrate } = await import('../database/migrate.js');
    const applied = await migrate(url);
    for (const name of applied) streams.out(`Applied ${name}.\n`);
    streams.out(`${url} is up to date.\n`);
    return EXIT.clean;
  } catch (error) {
    streams.err(`The database could not be brought up to date: ${messageOf(error)}\n`);
    return EXIT.unreadable;
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
