import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Sqlite from 'better-sqlite3';
import { serve, type RunningServer } from '../../server/serve.js';
import { ApiClient } from './api-client.js';

const PLANNER = 'Odile Marchetti';

/** The real application on a database file of its own, reached over HTTP. */
export class TestApp {
  #planner: Promise<ApiClient> | undefined;

  private constructor(
    private readonly folder: string,
    private server: RunningServer,
    private readonly password: string,
  ) {}

  static async start(): Promise<TestApp> {
    const folder = await mkdtemp(path.join(tmpdir(), 'countersign-'));
    const printed: string[] = [];
    const server = await serve({
      port: 0,
      databaseUrl: `file:${path.join(folder, 'counts.db')}`,
      demo: false,
      firstLeader: PLANNER,
      print: (line) => printed.push(line),
    });
    const password = printed.join('\n').split('signs in with the password ')[1]?.trim() ?? '';
    return new TestApp(folder, server, password);
  }

  get url(): string {
    return this.server.url;
  }

  client(): ApiClient {
    return new ApiClient(this.url);
  }

  /** The first leader of the programme, who may plan counts; signed in once. */
  planner(): Promise<ApiClient> {
    this.#planner ??= this.signInPlanner(PLANNER);
    return this.#planner;
  }

  /** @param name as it is typed */
  async signInPlanner(name: string): Promise<ApiClient> {
    const client = this.client();
    await client.signIn(name, this.password);
    return client;
  }

  /** Stops the server and starts it again on the same file; clients have to be made anew. */
  async restart(): Promise<void> {
    this.#planner = undefined;
    await this.server.close();
    this.server = await serve({
      port: 0,
      databaseUrl: `file:${this.databaseFile}`,
      demo: false,
      print: () => undefined,
    });
  }

  get databaseFile(): string {
    return path.join(this.folder, 'counts.db');
  }

  /** Works on the database file past the server, as someone with access to the disk could. */
  onDisk<Value>(work: (database: Sqlite.Database) => Value): Value {
    const database = new Sqlite(this.databaseFile);
    try {
      return work(database);
    } finally {
      database.close();
    }
  }

  async stop(): Promise<void> {
    await this.server.close();
    await rm(this.folder, { recursive: true, force: true });
  }
}
