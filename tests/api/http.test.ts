import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import express from 'express';
import { buildSchema, parse, validate } from 'graphql';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { queryLimits } from '../../server/api/query-limits.js';
import { serveWebFiles } from '../../server/api/web-files.js';
import { TestApp } from '../support/start-app.js';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

const JSON_TYPE = { 'content-type': 'application/json' };

function post(body: unknown, headers: Record<string, string> = JSON_TYPE): Promise<Response> {
  return fetch(`${app.url}/graphql`, { method: 'POST', headers, body: JSON.stringify(body) });
}

describe('GraphQL over HTTP', () => {
  it('refuses what another site could send without asking', async () => {
    const get = await fetch(`${app.url}/graphql?query={me{id}}`);
    expect(get.status).toBe(400);
    const form = await post({ query: '{ me { id } }' }, { 'content-type': 'text/plain' });
    expect(form.ok).toBe(false);
  });

  it('refuses bodies beyond the limit', async () => {
    const response = await post({ query: '{ me { id } }', variables: { x: 'x'.repeat(6e6) } });
    expect(response.status).toBe(413);
  });

  it('refuses a request for too many fields', async () => {
    const query = `{ ${Array.from({ length: 1_001 }, (_, n) => `a${n}: mayPlan`).join(' ')} }`;
    const { errors } = (await (await post({ query })).json()) as {
      errors: { message: string; extensions: { code: string } }[];
    };
    expect(errors[0]?.extensions.code).toBe('GRAPHQL_VALIDATION_FAILED');
    expect(errors[0]?.message).toContain('Ask for less at a time');
  });

  it('does not tell of its own bugs', async () => {
    app.onDisk((database) => database.exec('ALTER TABLE person RENAME TO person_gone'));
    const query = 'mutation { signIn(name: "x", password: "x") { id } }';
    const text = await (await post({ query })).text();
    app.onDisk((database) => database.exec('ALTER TABLE person_gone RENAME TO person'));
    expect(text).toContain('INTERNAL_SERVER_ERROR');
    expect(text).toContain('Something went wrong in the server, and nothing was changed.');
    expect(text).not.toMatch(/person_gone|prisma|sqlite|\.ts|no such/iu);
  });

  it('answers that it is well, and says how it may be used', async () => {
    const response = await fetch(`${app.url}/health`);
    expect(await response.json()).toEqual({ status: 'ok' });
    expect(response.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(response.headers.get('referrer-policy')).toBe('no-referrer');
    expect(response.headers.get('x-powered-by')).toBeNull();
  });
});

describe('the limits of a request', () => {
  const schema = buildSchema('type Query { self: Query n: Int }');
  const refusals = (query: string): readonly string[] =>
    validate(schema, parse(query), [queryLimits]).map(({ message }) => message);
  const nested = (depth: number): string =>
    `${'{ self '.repeat(depth - 1)} { n } ${'}'.repeat(depth - 1)}`;

  it('let 15 levels through, and no more', () => {
    expect(refusals(nested(15))).toEqual([]);
    expect(refusals(nested(16))).toHaveLength(1);
  });

  it('count fragments written out, also those that multiply', () => {
    const fragments = Array.from(
      { length: 40 },
      (_, n) => `fragment f${n} on Query { ...f${n + 1} ...f${n + 1} }`,
    );
    expect(refusals(`{ ...f0 } ${fragments.join(' ')} fragment f40 on Query { n }`)).toHaveLength(
      1,
    );
    expect(refusals('{ ...f } fragment f on Query { self { n } }')).toEqual([]);
  });

  it('end at fragments that go round in a circle', () => {
    expect(refusals('{ ...a } fragment a on Query { self { ...a } n }')).toEqual([]);
  });
});

describe('the files of the web app', () => {
  let folder: string;
  let url: string;
  let stop: () => void;

  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'countersign-web-'));
    await mkdir(path.join(folder, 'assets'));
    await writeFile(path.join(folder, 'index.html'), '<title>app</title>');
    const script = path.join(folder, 'assets', 'main-1a2b.js');
    await writeFile(script, 'script');
    // Other content, so that it shows which one was sent.
    await writeFile(`${script}.br`, brotliCompressSync('script, by Brotli'));
    await writeFile(`${script}.gz`, gzipSync('script, by gzip'));
    await writeFile(path.join(folder, 'assets', 'small-3c.js'), 'small');
    const server = express();
    serveWebFiles(server, folder);
    const listening = server.listen(0, '127.0.0.1');
    await new Promise((resolve) => listening.once('listening', resolve));
    url = `http://127.0.0.1:${(listening.address() as AddressInfo).port}`;
    stop = () => listening.close();
  });

  afterAll(async () => {
    stop();
    await rm(folder, { recursive: true, force: true });
  });

  const get = (place: string, accept = 'text/html', encoding = 'identity'): Promise<Response> =>
    fetch(`${url}${place}`, { headers: { accept, 'accept-encoding': encoding } });

  it('are kept for good where their name holds a hash, and asked for again otherwise', async () => {
    const asset = await get('/assets/main-1a2b.js', '*/*');
    expect(await asset.text()).toBe('script');
    expect(asset.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    const page = await get('/');
    expect(page.headers.get('cache-control')).toBe('no-cache');
  });

  it('are sent packed where that was done and the browser can unpack it', async () => {
    for (const [asked, encoding, text] of [
      ['gzip, deflate, br', 'br', 'script, by Brotli'],
      ['gzip, br;q=0', 'gzip', 'script, by gzip'],
      ['identity', null, 'script'],
    ] as const) {
      const asset = await get('/assets/main-1a2b.js', '*/*', asked);
      expect(asset.headers.get('content-encoding')).toBe(encoding);
      expect(asset.headers.get('content-type')).toMatch(/^text\/javascript/u);
      expect(asset.headers.get('vary')).toBe('Accept-Encoding');
      expect(asset.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
      expect(await asset.text()).toBe(text);
    }
    const small = await get('/assets/small-3c.js', '*/*', 'br');
    expect(small.headers.get('content-encoding')).toBe(null);
    expect(await small.text()).toBe('small');
  });

  it('give every page of the app, and nothing for a file that is not there', async () => {
    for (const page of ['/', '/invite/abc', '/counts/lake/review']) {
      expect(await (await get(page)).text()).toBe('<title>app</title>');
    }
    expect((await get('/assets/old-9f.js')).status).toBe(404);
    expect((await get('/graphql')).status).toBe(404);
    expect((await get('/../package.json', '*/*')).status).not.toBe(500);
  });
});
