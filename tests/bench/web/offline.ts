/*
 * What the observer's pages cost and keep, on the built app, a real server and a real browser:
 *   (a) JavaScript that the tally page loads for readers of each language, packed by Brotli and by gzip as tightly as they can;
 *   (b) time from opening that page without a network until it can be written in, on a processor
 *       slowed to a quarter;
 *   (c) 200 tallies that wait on the phone, sent through a network that breaks ten times in the
 *       middle of what it carries: none lost, none doubled.
 * Run by hand, with nothing else on the machine; SEED chooses where the network breaks, TALLIES how many
 * there are (a multiple of 10):
 *   npm run build && npx rolldown tests/bench/web/offline.ts --platform node --external playwright-core --file dist/bench/offline.js && node dist/bench/offline.js
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { seededRandom } from '../../../server/core/math/seeded-random.js';
import { ApiClient } from '../../support/api-client.js';
import { findChromium } from '../../support/find-chromium.mjs';
import { square } from '../../support/small-folder.js';
import { flags, phone } from '../../web/browser.mjs';
import { openBareBrowser } from './bare-browser.js';
import { timeOpening } from './time-opening.js';

const TALLIES = Number(process.env['TALLIES'] ?? 200);
const SECTIONS = 10;
const BREAKS = 10;
const SLOWED = 4;
/** How often the page is opened; an odd number has a median. */
const OPENINGS = 7;
const SEED = Number(process.env['SEED'] ?? 1);
const COUNT = 'bench-lake';
const LEADER = 'Odile Marchetti';

const folder = await mkdtemp(path.join(tmpdir(), 'countersign-bench-'));

/** The built server on a database of its own. */
async function startServer(): Promise<{ port: number; password: string; stop: () => void }> {
  const port = await freePort();
  const running = spawn(process.execPath, ['dist/server/main.js'], {
    env: {
      ...process.env,
      PORT: String(port),
      DATABASE_URL: `file:${path.join(folder, 'counts.db')}`,
      FIRST_LEADER: LEADER,
    },
  });
  let said = '';
  for await (const chunk of running.stdout) {
    said += String(chunk);
    const password = /signs in with the password (\S+)/u.exec(said)?.[1];
    if (password !== undefined) return { port, password, stop: () => running.kill() };
  }
  throw new Error(`The server did not start: ${said}`);
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  probe.close();
  return port;
}

/** A network between phone and server that can be cut in the middle of whatever it carries. */
async function network(port: number) {
  const open = new Set<Socket>();
  let isCut = false;
  let answers = 0;
  let onAnswer = (_: number): void => undefined;
  const proxy = createServer((near) => {
    if (isCut) {
      near.destroy();
      return;
    }
    const far = connect(port, '127.0.0.1');
    for (const socket of [near, far]) {
      open.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        open.delete(socket);
        near.destroy();
        far.destroy();
      });
    }
    near.pipe(far);
    far.on('data', (data) => {
      answers += 1;
      onAnswer(answers);
      if (!near.destroyed) near.write(data);
    });
  }).listen(0, '127.0.0.1');
  await once(proxy, 'listening');
  return {
    url: `http://localhost:${(proxy.address() as AddressInfo).port}`,
    cut(isNow: boolean): void {
      isCut = isNow;
      if (isNow) for (const socket of open) socket.destroy();
    },
    /** Told of each piece of an answer before it is handed on. */
    whenAnswering(listener: (answer: number) => void): void {
      answers = 0;
      onAnswer = listener;
    },
    close: () => proxy.close(),
  };
}

async function planCount(leader: ApiClient): Promise<string> {
  const sections = Array.from({ length: SECTIONS }, (_, index) => `s${index}`);
  const windows = Array.from({ length: TALLIES / SECTIONS }, (_, index) => {
    const hour = String(index).padStart(2, '0');
    const [start, end] = [`2027-01-16T${hour}:00:00-05:00`, `2027-01-16T${hour}:50:00-05:00`];
    return { id: `w${index}`, start, end, slackMinutes: 0 };
  });
  const features = sections.map((id, index) => ({
    type: 'Feature',
    properties: { kind: 'section', id, name: `Reach ${index + 1}` },
    geometry: { type: 'Polygon', coordinates: [square(-79.5 + index * 0.04, 44)] },
  }));
  await leader.ask('mutation ($input: PlanCountInput!) { planCount(input: $input) { id } }', {
    input: {
      id: COUNT,
      name: 'Bench Lake',
      waterbody: 'Bench Lake',
      date: '2027-01-16',
      timeZone: 'America/Toronto',
      windows,
      places: JSON.stringify({ type: 'FeatureCollection', features }),
      people: [
        { id: 'lea', name: 'Lea Bystrom', roles: ['LEADER'] },
        { id: 'ola', name: 'Ola Ferrant', roles: ['OBSERVER'] },
      ],
    },
  });
  for (const { id: windowId } of windows) {
    for (const sectionId of sections) {
      const id = `${windowId}-${sectionId}`;
      const input = { id, countId: COUNT, personId: 'ola', sectionIds: [sectionId], windowId };
      await leader.ask('mutation ($input: AssignInput!) { assign(input: $input) { id } }', {
        input,
      });
    }
  }
  const { invite } = await leader.ask<{ invite: { path: string } }>(
    'mutation ($id: ID!) { invite(countId: $id, personId: "ola") { path } }',
    { id: COUNT },
  );
  return invite.path;
}

/** Puts tallies into the phone's outbox as the form does, in one go. */
async function fillOutbox(page: Page): Promise<void> {
  await page.evaluate(
    ({ count, tallies, sections }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('countersign');
        opening.onsuccess = () => {
          const writing = opening.result.transaction('outbox', 'readwrite');
          for (let index = 0; index < tallies; index += 1) {
            const [sectionId, windowId] = [
              `s${index % sections}`,
              `w${Math.floor(index / sections)}`,
            ];
            const id = `tally-${String(index).padStart(3, '0')}`;
            const line = { taxon: 'Anas platyrhynchos', number: index, method: 'one-by-one' };
            writing.objectStore('outbox').put({
              ...{ id, personId: 'ola', countId: count, assignmentId: `${windowId}-${sectionId}` },
              ...{
                draft: null,
                edit: null,
                since: index,
                state: { kind: 'waiting', because: null },
              },
              input: {
                ...{ id, countId: count, sectionIds: [sectionId], windowId },
                ...{ scope: 'all-waterbirds', coverage: 1 },
                lines: [{ id: `${id}-line`, ...line }],
              },
            });
          }
          writing.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          writing.onerror = () => reject(new Error('The outbox could not be filled.'));
        };
      }),
    { count: COUNT, tallies: TALLIES, sections: SECTIONS },
  );
}

/** Prints what JavaScript the page loads for a reader of a language. */
async function weighPage(url: string, language: string): Promise<void> {
  const page = await context.newPage();
  const packed = new Map<string, { brotli: number; gzip: number }>();
  const weighing: Promise<void>[] = [];
  page.on('response', (response) => {
    if (!response.url().endsWith('.js')) return;
    weighing.push(
      response.body().then((body) => {
        const [brotli, gzip] = [brotliCompressSync(body), gzipSync(body, { level: 9 })];
        packed.set(response.url(), { brotli: brotli.length, gzip: gzip.length });
      }),
    );
  });
  await page.addInitScript((chosen) => {
    localStorage.setItem('countersign.language', JSON.stringify(chosen));
    const look = (): void => {
      if (document.querySelector('[role=combobox]') === null) requestAnimationFrame(look);
      else Object.assign(window, { usableAt: performance.now() });
    };
    requestAnimationFrame(look);
  }, language);
  await page.goto(url);
  await page.getByRole('combobox').first().waitFor();
  await page.waitForLoadState('networkidle');
  await Promise.all(weighing);
  const needed = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter(({ startTime }) => startTime < Number((window as { usableAt?: number }).usableAt))
      .map(({ name }) => name),
  );
  const sum = (files: readonly { brotli: number; gzip: number }[]): string => {
    const of = (packing: 'brotli' | 'gzip'): string =>
      (files.reduce((all, file) => all + file[packing], 0) / 1000).toFixed(1);
    return `${of('brotli')} kB packed by Brotli, ${of('gzip')} kB by gzip`;
  };
  console.log(
    `(a) JavaScript until the tally can be written (${language}): ` +
      `${sum([...packed].flatMap(([name, size]) => (needed.includes(name) ? size : [])))}; ` +
      `with the parts that follow: ${sum([...packed.values()])}`,
  );
}

const server = await startServer();
const shaky = await network(server.port);
const leader = new ApiClient(`http://localhost:${server.port}`);
await leader.signIn(LEADER, server.password);
const invite = await planCount(leader);
const profile = path.join(folder, 'phone');
const openPhone = () =>
  chromium.launchPersistentContext(profile, {
    executablePath: findChromium() ?? '',
    args: flags,
    viewport: phone,
    serviceWorkers: 'allow',
  });
let context = await openPhone();
try {
  const visit = await context.newPage();
  await visit.goto(shaky.url + invite);
  await visit.getByRole('button', { name: 'Open my assignments' }).click();
  await visit.getByRole('heading', { name: 'My assignments' }).waitFor();
  await visit.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });

  const form = `${shaky.url}/counts/${COUNT}/assignments/w0-s0`;
  for (const language of ['fr', 'en']) await weighPage(form, language);
  await context.close();

  shaky.cut(true);
  const browser = openBareBrowser(profile);
  const times: number[] = [];
  for (let run = 0; run < OPENINGS; run += 1) {
    times.push(await timeOpening(browser, form, '[role=combobox]', SLOWED));
  }
  await browser.close();
  times.sort((one, other) => one - other);
  console.log(
    `(b) usable offline, processor slowed ${SLOWED} times: median ` +
      `${Math.round(times[(OPENINGS - 1) / 2] ?? 0)} ms, ` +
      `longest ${Math.round(times.at(-1) ?? 0)} ms of ${OPENINGS}`,
  );

  context = await openPhone();
  const sending = await context.newPage();
  await sending.goto(form);
  await fillOutbox(sending);
  const random = seededRandom(SEED);
  const breaks = new Set<number>();
  while (breaks.size < BREAKS) breaks.add(1 + random.integer(TALLIES));
  let broken = 0;
  shaky.whenAnswering((answer) => {
    if (!breaks.has(answer)) return;
    broken += 1;
    shaky.cut(true);
    setTimeout(() => shaky.cut(false), 200 + random.integer(1500));
  });
  shaky.cut(false);
  const start = performance.now();
  await sending.goto(`${shaky.url}/counts/${COUNT}/assignments`);
  await sending
    .getByText('Everything that this phone has was received.')
    .waitFor({ timeout: 600_000 });
  const took = (performance.now() - start) / 1000;
  const ola = new ApiClient(`http://localhost:${server.port}`);
  const { invite: again } = await leader.ask<{ invite: { path: string } }>(
    'mutation ($id: ID!) { invite(countId: $id, personId: "ola") { path } }',
    { id: COUNT },
  );
  await ola.acceptInvite(again.path);
  const { count } = await ola.ask<{
    count: { myTallies: { id: string; total: number; version: number }[] };
  }>('query ($id: ID!) { count(id: $id) { myTallies { id total version } } }', { id: COUNT });
  const ids = new Set(count.myTallies.map(({ id }) => id));
  const wrong = count.myTallies.filter(
    ({ id, total, version }) => total !== Number(id.slice(-3)) || version !== 1,
  );
  console.log(
    `(c) ${TALLIES} tallies, ${broken} broken connections (seed ${SEED}), ${took.toFixed(0)} s: ` +
      `${TALLIES - ids.size} lost, ${count.myTallies.length - ids.size} doubled, ${wrong.length} wrong`,
  );
} finally {
  await context.close();
  shaky.close();
  server.stop();
  await rm(folder, { recursive: true, force: true });
}
