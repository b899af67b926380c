import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { v7 as newId } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PROJECT_ROOT } from '../../server/project-root.js';
import { ApiClient } from '../support/api-client.js';
import { aTally, planTestCount, SUBMIT } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

describe('a restart', () => {
  it('keeps everything: sessions, tallies, rulings, the trail', async () => {
    const app = await TestApp.start();
    const count = await planTestCount(app, { assignments: [['ola', ['s1']]] });
    const { id } = await count.submit('ola', {});
    const query = `query ($id: ID!) { count(id: $id) { state may myTallies { id version lines { id number } }
      assignments { id submitted } } }`;
    const before = await count.as.ola.ask(query, { id: count.id });
    await app.restart();

    const again = app.client();
    again.cookie = count.as.ola.cookie;
    expect(await again.ask(query, { id: count.id })).toEqual(before);
    expect(JSON.stringify(before)).toContain(id);
    const leader = app.client();
    leader.cookie = count.planner.cookie;
    expect(
      await leader.ask('query ($id: ID!) { count(id: $id) { auditTrail { intact size } } }', {
        id: count.id,
      }),
    ).toEqual({ count: { auditTrail: { intact: true, size: 3 } } });
    await app.stop();
  });
});

/** The compiled server in a process of its own, so that it can be killed. */
class ServerProcess {
  private constructor(
    private readonly child: ChildProcess,
    readonly url: string,
    readonly printed: string,
  ) {}

  static async start(databaseUrl: string, firstLeader?: string): Promise<ServerProcess> {
    const child = spawn(process.execPath, [path.join(PROJECT_ROOT, 'dist/server/main.js')], {
      env: {
        ...process.env,
        PORT: '0',
        DATABASE_URL: databaseUrl,
        ...(firstLeader !== undefined && { FIRST_LEADER: firstLeader }),
      },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    let printed = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (printed += text));
    const isUp = (): boolean =>
      printed.includes('Ctrl-C') && (firstLeader === undefined || printed.includes('the password'));
    while (!isUp()) {
      if (child.exitCode !== null) throw new Error(`the server ended: ${printed}`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    const url = /http:\S+/u.exec(printed)?.[0] ?? '';
    return new ServerProcess(child, url, printed);
  }

  /** Gives it no time for anything. */
  async kill(): Promise<void> {
    this.child.kill('SIGKILL');
    await once(this.child, 'exit');
  }

  /** @returns the exit code of an orderly end */
  async terminate(): Promise<number | null> {
    this.child.kill('SIGTERM');
    const [code] = (await once(this.child, 'exit')) as [number | null];
    return code;
  }
}

describe('kill -9', () => {
  let folder: string;

  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'countersign-crash-'));
    const build = spawn(
      process.execPath,
      [path.join(PROJECT_ROOT, 'server/build.mjs'), '--quiet'],
      {
        stdio: 'inherit',
      },
    );
    const [code] = (await once(build, 'exit')) as [number];
    if (code !== 0) throw new Error('the server does not build');
  }, 300_000);

  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('loses no tally that was acknowledged, and leaves the audit chain whole', async () => {
    const databaseUrl = `file:${path.join(folder, 'counts.db')}`;
    let server = await ServerProcess.start(databaseUrl, 'Odile Marchetti');
    const password = server.printed.split('the password ')[1]?.trim() ?? '';
    const app = {
      client: () => new ApiClient(server.url),
      planner: async () => {
        const client = new ApiClient(server.url);
        await client.signIn('Odile Marchetti', password);
        return client;
      },
    };
    const sections = ['s1', 's2', 's3'];
    const people = ['ola', 'pia', 'uma', 'kai'] as const;
    const count = await planTestCount(app, {
      assignments: people.flatMap((person) =>
        sections.map((section) => [person, [section]] as const),
      ),
    });

    const acknowledged = new Set<string>();
    // Settled from the start: the kill rejects those that are under way.
    const sent = Promise.allSettled(
      people.flatMap((person) =>
        sections.map(async (section) => {
          const id = newId();
          const input = aTally({ countId: count.id, id, sectionIds: [section] });
          await count.as[person].ask(SUBMIT, { input });
          acknowledged.add(id);
        }),
      ),
    );
    while (acknowledged.size < 4) await new Promise((resolve) => setTimeout(resolve, 1));
    await server.kill();
    const outcomes = await sent;
    // The kill came while others were under way, or it would prove nothing.
    expect(outcomes.some(({ status }) => status === 'rejected')).toBe(true);

    server = await ServerProcess.start(databaseUrl);
    const planner = await app.planner();
    await planner.ask('mutation ($id: ID!) { closeWindow(countId: $id, windowId: "w1") { id } }', {
      id: count.id,
    });
    const { count: found } = await planner.ask<{
      count: {
        assignments: { tally: { id: string } | null }[];
        auditTrail: { intact: boolean };
      };
    }>(
      'query ($id: ID!) { count(id: $id) { assignments { tally { id } } auditTrail { intact } } }',
      { id: count.id },
    );
    const stored = found.assignments.flatMap(({ tally }) => (tally === null ? [] : [tally.id]));
    expect(stored).toEqual(expect.arrayContaining([...acknowledged]));
    expect(found.auditTrail.intact).toBe(true);
    expect(await server.terminate()).toBe(0);
  });
});
