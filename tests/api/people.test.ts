import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { invited, planTestCount, type TestCount } from '../support/test-count.js';
import { TestApp } from '../support/start-app.js';

const ME = '{ me { id name } mayPlan }';
const INVITE =
  'mutation ($countId: ID!, $personId: ID!) { invite(countId: $countId, personId: $personId) { path } }';
const ACCEPT = 'mutation ($token: String!) { acceptInvite(token: $token) { id } }';
const SIGN_IN =
  'mutation ($name: String!, $password: String!) { signIn(name: $name, password: $password) { id } }';
const SET_PASSWORD =
  'mutation ($current: String, $new: String!) { setPassword(current: $current, new: $new) { id } }';
const COUNT = 'query ($id: ID!) { count(id: $id) { id } }';

let app: TestApp;
let count: TestCount;

beforeAll(async () => {
  app = await TestApp.start();
  count = await planTestCount(app);
});

afterAll(() => app.stop());

async function newLink(personId: string): Promise<string> {
  const { invite } = await count.planner.ask<{ invite: { path: string } }>(INVITE, {
    countId: count.id,
    personId,
  });
  return invite.path.split('/').at(-1) ?? '';
}

describe('signing in', () => {
  it('by password gives an httpOnly cookie of the same site', async () => {
    const client = await app.signInPlanner('Odile Marchetti');
    const response = await fetch(`${app.url}/graphql`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: client.cookie },
      body: JSON.stringify({ query: 'mutation { signOut }' }),
    });
    const [cleared = ''] = response.headers.getSetCookie();

    expect(client.cookie).toMatch(/^countersign_session=[\w-]{43}$/);
    expect(cleared).toContain('HttpOnly');
    expect(cleared).toContain('SameSite=Lax');
    expect(await client.ask(ME)).toEqual({ me: null, mayPlan: false });
  });

  it('does not mind case and spaces of the name', async () => {
    const client = await app.signInPlanner(' odile  MARCHETTI ');
    expect(await client.ask(ME)).toMatchObject({ me: { name: 'Odile Marchetti' } });
  });

  it('says the same of an unknown name as of a wrong password', async () => {
    const known = await app.client().refused(SIGN_IN, { name: 'Odile Marchetti', password: 'x' });
    const unknown = await app.client().refused(SIGN_IN, { name: 'Nobody', password: 'x' });
    expect(unknown).toEqual(known);
  });

  it('is slowed down for a name that fails ten times, even all at once', async () => {
    const tries = Array.from({ length: 12 }, () =>
      app.client().refused(SIGN_IN, { name: 'Guessed At', password: 'x' }),
    );
    const codes = (await Promise.all(tries)).map(({ code }) => code).sort();
    expect(codes).toEqual([
      ...Array.from({ length: 2 }, () => 'TOO_MANY_TRIES'),
      ...Array.from({ length: 10 }, () => 'WRONG_PASSWORD'),
    ]);
  });

  it('ends when the session runs out', async () => {
    const client = await invited(app, count.planner, count.id, 'uma');
    expect(await client.ask(ME)).toMatchObject({ me: { id: 'uma' } });
    app.onDisk((database) =>
      database
        .prepare("UPDATE session SET expiresAt = '2020-01-01T00:00:00.000Z' WHERE personId = 'uma'")
        .run(),
    );
    expect(await client.ask(ME)).toMatchObject({ me: null });
  });

  it('stores no token, only its hash', async () => {
    const client = await app.planner();
    const token = client.cookie.split('=')[1] ?? '';
    const dump = app.onDisk((database) =>
      JSON.stringify(database.prepare('SELECT * FROM session').all()),
    );
    expect(token).toHaveLength(43);
    expect(dump).not.toContain(token);
  });
});

describe('invite links', () => {
  it('are for one person, and work again until they are replaced', async () => {
    const token = await newLink('ola');
    expect(await app.client().ask(ACCEPT, { token })).toEqual({ acceptInvite: { id: 'ola' } });
    expect(await app.client().ask(ACCEPT, { token })).toEqual({ acceptInvite: { id: 'ola' } });

    const newer = await newLink('ola');
    expect((await app.client().refused(ACCEPT, { token })).code).toBe('INVITE_SPENT');
    expect(await app.client().ask(ACCEPT, { token: newer })).toEqual({
      acceptInvite: { id: 'ola' },
    });
  });

  it('run out', async () => {
    const token = await newLink('pia');
    app.onDisk((database) =>
      database.prepare("UPDATE invite SET expiresAt = '2020-01-01T00:00:00.000Z'").run(),
    );
    expect((await app.client().refused(ACCEPT, { token })).code).toBe('INVITE_SPENT');
  });

  it('are made by leaders only, for people of the count only', async () => {
    const byCompiler = await count.as.kim.refused(INVITE, { countId: count.id, personId: 'ola' });
    const forStranger = await count.planner.refused(INVITE, {
      countId: count.id,
      personId: 'stranger',
    });
    expect(byCompiler.code).toBe('NOT_ALLOWED');
    expect(forStranger.code).toBe('NOT_FOUND');
  });

  it('open no other count of the person', async () => {
    const other = await planTestCount(app);
    expect((await count.as.kim.refused(COUNT, { id: other.id })).code).toBe('NOT_FOUND');
    const counts = await count.as.kim.ask<{ counts: { id: string }[] }>('{ counts { id } }');
    expect(counts.counts.map(({ id }) => id)).toEqual([count.id]);
  });

  it('add a count to a session of the same person', async () => {
    const other = await planTestCount(app);
    const client = await invited(app, count.planner, count.id, 'kim');
    const { invite } = await other.planner.ask<{ invite: { path: string } }>(INVITE, {
      countId: other.id,
      personId: 'kim',
    });
    await client.acceptInvite(invite.path);
    const { counts } = await client.ask<{ counts: { id: string }[] }>('{ counts { id } }');
    expect(counts.map(({ id }) => id).sort()).toEqual([count.id, other.id].sort());
  });
});

describe('passwords', () => {
  it('are set by a person whose links open all of their counts, and then open everything', async () => {
    const apart = await TestApp.start();
    const only = await planTestCount(apart);
    const client = only.as.kim;
    expect((await client.refused(SET_PASSWORD, { new: 'short' })).faults[0]?.code).toBe(
      'password-length',
    );
    await client.ask(SET_PASSWORD, { new: 'heron mill lantern' });

    const again = apart.client();
    await again.signIn('Kim Abara', 'heron mill lantern');
    expect(await again.ask(COUNT, { id: only.id })).toEqual({ count: { id: only.id } });
    const renewed = await client.refused(SET_PASSWORD, { current: 'x', new: 'otter mill lantern' });
    expect(renewed.code).toBe('WRONG_PASSWORD');
    const link = await only.planner.refused(INVITE, { countId: only.id, personId: 'kim' });
    expect(link.code).toBe('NOT_NOW');
    await apart.stop();
  });

  it('are not set through a link that opens only one of several counts', async () => {
    await planTestCount(app);
    const client = await invited(app, count.planner, count.id, 'kai');
    const refused = await client.refused(SET_PASSWORD, { new: 'heron mill lantern' });
    expect(refused.code).toBe('NOT_ALLOWED');
  });

  it('are stored salted and hashed', () => {
    const hashes = app.onDisk((database) =>
      database
        .prepare('SELECT passwordHash FROM person WHERE passwordHash IS NOT NULL')
        .pluck()
        .all(),
    );
    expect(hashes).toHaveLength(1);
    expect(hashes[0]).toMatch(/^scrypt\$32768\$8\$1\$[0-9a-f]{32}\$[0-9a-f]{64}$/);
  });
});

describe('planning', () => {
  it('is for leaders with a password: not for a leader by link, nor for others', async () => {
    expect(await count.planner.ask(ME)).toMatchObject({ mayPlan: true });
    expect(await count.as.lea.ask(ME)).toMatchObject({ mayPlan: false });
    expect(await count.as.kim.ask(ME)).toMatchObject({ mayPlan: false });
  });

  it('refuses a person id that belongs to someone of another name', async () => {
    const refused = await count.planner.refused(
      'mutation ($files: [FolderFileInput!]!) { importCount(files: $files) { id } }',
      { files: await folderWith({ id: 'kim', name: 'Somebody Else', roles: ['observer'] }) },
    );
    expect(refused.code).toBe('BAD_INPUT');
    expect(refused.faults.map(({ code }) => code)).toEqual(['id-in-use']);
  });
});

async function folderWith(person: object): Promise<object[]> {
  const { filesOf, smallFolder } = await import('../support/small-folder.js');
  const folder = smallFolder();
  (folder.count['people'] as object[]).push(person);
  return filesOf(folder).map(({ name, content }) => ({ name, text: String(content) }));
}
