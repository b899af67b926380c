import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve, type RunningServer } from '../../server/serve.js';
import { ApiClient } from '../support/api-client.js';

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'countersign-demo-'));
});

afterAll(() => rm(folder, { recursive: true, force: true }));

function start(file: string, demo: boolean, firstLeader: string | null = null) {
  const printed: string[] = [];
  const server = serve({
    port: 0,
    databaseUrl: `file:${path.join(folder, file)}`,
    demo,
    firstLeader,
    print: (line) => printed.push(line),
  });
  return { server, printed };
}

async function submittedOf(client: ApiClient): Promise<boolean[]> {
  const { counts } = await client.ask<{
    counts: { assignments: { submitted: boolean }[] }[];
  }>('{ counts { assignments { submitted } } }');
  return counts.flatMap(({ assignments }) => assignments.map(({ submitted }) => submitted));
}

describe('the demonstration', () => {
  let server: RunningServer;
  let printed: string[];

  beforeAll(async () => {
    const started = start('demo.db', true);
    server = await started.server;
    printed = started.printed;
  });

  afterAll(() => server.close());

  it('prints the address and how everyone signs in, once each', () => {
    const text = printed.join('\n');
    expect(text).toContain(server.url);
    for (const { name, roles, password, path: link } of server.signIns) {
      const line = printed.find((one) => one.includes(name)) ?? '';
      expect(line).toContain(roles);
      expect(line).toContain(password ?? `${server.url}${link ?? '?'}`);
    }
    expect(new Set(server.signIns.map(({ name }) => name)).size).toBe(server.signIns.length);
  });

  it('lets leader and compiler in by password, observers by link', async () => {
    expect(server.signIns.length).toBeGreaterThan(2);
    for (const { name, password, path: link, roles } of server.signIns) {
      const client = new ApiClient(server.url);
      if (password !== null) await client.signIn(name, password);
      else await client.acceptInvite(link ?? '');
      expect(await client.ask('{ me { name } }')).toEqual({ me: { name } });
      expect(password === null).toBe(!/leader|compiler/u.test(roles));
    }
  });

  it('has the shoreline of its folder, in the database and after', async () => {
    const file = new URL('../../scenarios/lake-emberlow/places.geojson', import.meta.url);
    const places = JSON.parse(await readFile(file, 'utf8')) as {
      features: {
        properties: { kind: string };
        geometry: { type: string; coordinates: unknown };
      }[];
    };
    const drawn = places.features.filter(({ properties }) => properties.kind === 'shoreline');
    expect(drawn.map(({ geometry }) => geometry.type)).toEqual(['Polygon', 'MultiLineString']);
    const [area, streams] = drawn.map(({ geometry }) => geometry.coordinates);
    const client = new ApiClient(server.url);
    const [leader] = server.signIns.filter(({ password }) => password !== null);
    await client.signIn(leader?.name ?? '', leader?.password ?? '');
    const { counts } = await client.ask<{
      counts: { shoreline: { isArea: boolean; lines: unknown[] }[] }[];
    }>('{ counts { shoreline { isArea lines } } }');
    const shoreline = counts[0]?.shoreline ?? [];
    expect(shoreline.filter(({ isArea }) => isArea).map(({ lines }) => lines)).toEqual([area]);
    const lines = shoreline.filter(({ isArea }) => !isArea).flatMap((part) => part.lines);
    expect(lines).toHaveLength(2);
    expect(lines).toEqual(expect.arrayContaining(streams as unknown[]));
  });

  it('leaves one tally for a visitor to submit, and says whose', async () => {
    const [visitor] = server.signIns.filter(({ note }) => note !== null);
    expect(visitor?.note).toMatch(/^still to submit: /u);
    const client = new ApiClient(server.url);
    await client.acceptInvite(visitor?.path ?? '');
    expect((await submittedOf(client)).filter((submitted) => !submitted)).toHaveLength(1);
  });

  it('is not loaded again at the next start, which gives new links', async () => {
    const before = server.signIns;
    await server.close();
    const again = start('demo.db', true);
    server = await again.server;
    expect(server.signIns.map(({ name, note }) => [name, note])).toEqual(
      before.map(({ name, note }) => [name, note]),
    );
    const stale = before.find(({ path: link }) => link !== null)?.path ?? '';
    const client = new ApiClient(server.url);
    const { code } = await client.refused(
      'mutation ($token: String!) { acceptInvite(token: $token) { id } }',
      { token: stale.split('/').at(-1) },
    );
    expect(code).toBe('INVITE_SPENT');
  });
});

describe('a database', () => {
  it('of the demonstration is not served otherwise: its passwords are known', async () => {
    await (await start('known.db', true).server).close();
    await expect(start('known.db', false).server).rejects.toThrow('whose passwords everyone knows');
    await (await start('known.db', true).server).close();
  });

  it('of a real programme is not made a demonstration', async () => {
    await (await start('real.db', false, 'Odile Marchetti').server).close();
    await expect(start('real.db', true).server).rejects.toThrow('Start it without --demo');
  });

  it('gives its first leader a new password when asked again', async () => {
    const password = async (): Promise<{ password: string; server: RunningServer }> => {
      const { server, printed } = start('leader.db', false, 'Odile Marchetti');
      const running = await server;
      const given = printed.join('\n').split('signs in with the password ')[1] ?? '';
      return { password: given.trim(), server: running };
    };
    const first = await password();
    await first.server.close();
    const second = await password();
    const client = new ApiClient(second.server.url);
    await expect(client.signIn('Odile Marchetti', first.password)).rejects.toThrow();
    await client.signIn('Odile Marchetti', second.password);
    expect(await client.ask('{ mayPlan }')).toEqual({ mayPlan: true });
    await second.server.close();
  });
});
