/*
 * Time from a tap to its effect on the screen, in a tally of 300 lines, on a processor slowed to a
 * quarter: a tap beside a line in the list, and one on the keys of an open line. The goal is under
 * 100 ms. The built pages are served with a made-up count; no server is needed. Run by hand, with
 * nothing else on the machine:
 *   npm run build && npx rolldown tests/bench/web/tap.ts --platform node --external playwright-core --file dist/bench/tap.js && node dist/bench/tap.js
 */
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { LEAVES } from '../../../server/core/taxa/leaf.js';
import { findChromium } from '../../support/find-chromium.mjs';
import { launch, openPage, phone } from '../../web/browser.mjs';
import { observerAnswers, ownPart } from '../../web/observer-count.js';

const LINES = 300;
const TAPS = 60;
const SLOWED = 4;
const GOAL = 100;
const BETWEEN_TAPS = 250;

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
};

/** A tally as it was sent, so that correcting it opens a draft of as many lines. */
function longTally() {
  const species = LEAVES.filter(({ regular }) => regular);
  return {
    __typename: 'Tally',
    id: 't-long',
    sections: [{ id: 's1', name: 'North Bay' }],
    window: { id: 'w1' },
    vantage: { id: 'v1' },
    party: [{ id: 'o1', name: 'Ingrid Vale' }],
    start: '2027-01-16T08:15:00-05:00',
    end: '2027-01-16T10:30:00-05:00',
    scope: 'all-waterbirds',
    coverage: 1,
    conditions: null,
    submittedAt: '2027-01-16T10:31:00-05:00',
    version: 1,
    replaces: null,
    reason: null,
    total: LINES,
    samples: [],
    lines: Array.from({ length: LINES }, (_, index) => {
      const taxon = species[index % species.length]?.species ?? 'Anas platyrhynchos';
      return {
        id: `l${index}`,
        written: taxon,
        taxon,
        candidates: [taxon],
        number: 1,
        low: null,
        high: null,
        present: false,
        method: 'one-by-one',
        block: null,
        male: null,
        female: null,
        adult: null,
        immature: null,
        activity: 'water',
        time: '2027-01-16T08:41:00-05:00',
        lon: -79.01,
        lat: 44.01,
        flock: `raft ${index}`,
        heading: 90,
        from: null,
        to: null,
        certainty: 'sure',
        note: null,
        marks: [],
      };
    }),
  };
}

async function servePages(): Promise<{ url: string; close: () => void }> {
  const root = path.join(process.cwd(), 'dist/web');
  const tally = longTally();
  const answers = observerAnswers(ownPart());
  const part = { ...ownPart(), myTallies: [tally] };
  const server = createServer((request, response) => {
    void (async () => {
      const { pathname } = new URL(request.url ?? '/', 'http://localhost');
      if (pathname === '/graphql') {
        let body = '';
        for await (const chunk of request) body += String(chunk);
        const { operationName } = JSON.parse(body) as { operationName: string };
        const plain = answers[operationName];
        const data =
          operationName === 'MyAssignments'
            ? { me: { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' }, count: part }
            : typeof plain === 'function'
              ? plain({})
              : plain;
        response.setHeader('content-type', 'application/json').end(JSON.stringify({ data }));
        return;
      }
      const file = types[path.extname(pathname)] === undefined ? '/index.html' : pathname;
      response.setHeader('content-type', types[path.extname(file)] ?? 'text/plain');
      response.end(await readFile(path.join(root, path.normalize(file))));
    })().catch(() => response.writeHead(404).end());
  });
  await new Promise<void>((listening) => {
    server.listen(0, '127.0.0.1', listening);
  });
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}`, close: () => server.close() };
}

/** Notes for each tap how long after it the first frame was drawn in which the text is another one. */
async function watchTaps(page: Page, shown: string): Promise<void> {
  await page.evaluate((selector) => {
    const textOf = (): string => {
      const element = document.querySelector(selector);
      return element instanceof HTMLInputElement ? element.value : (element?.textContent ?? '');
    };
    const times: number[] = [];
    Object.assign(window, { tapTimes: times });
    window.addEventListener(
      'pointerdown',
      (event) => {
        const [from, before] = [event.timeStamp, textOf()];
        const look = (): void => {
          // A task after the frame: what changed in it is on the screen.
          const channel = new MessageChannel();
          channel.port1.onmessage = () => {
            if (textOf() === before) requestAnimationFrame(look);
            else times.push(performance.now() - from);
          };
          channel.port2.postMessage(null);
        };
        requestAnimationFrame(look);
      },
      true,
    );
  }, shown);
}

/** Taps as fast as a hand does, with nothing else asked of the page meanwhile. */
async function timeTaps(page: Page, key: string, shown: string): Promise<readonly number[]> {
  await watchTaps(page, shown);
  const button = page.locator(key).first();
  await button.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const box = await button.boundingBox();
  if (box === null) throw new Error(`There is no ${key} to tap.`);
  for (let tap = 1; tap <= TAPS; tap += 1) {
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await page.waitForTimeout(BETWEEN_TAPS);
  }
  const times = await page.evaluate(() => (window as unknown as { tapTimes: number[] }).tapTimes);
  if (times.length !== TAPS) throw new Error(`${times.length} of ${TAPS} taps had an effect.`);
  return times;
}

function print(what: string, times: readonly number[]): void {
  const sorted = times.toSorted((one, other) => one - other);
  const at = (share: number): string =>
    String(
      Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? NaN),
    );
  const isMet = (sorted.at(-1) ?? Infinity) < GOAL;
  console.log(
    `${what}: median ${at(0.5)} ms, 95 % under ${at(0.95)} ms, slowest ${at(1)} ms of ${times.length} taps; goal ${GOAL} ms ${isMet ? 'met' : 'missed'}`,
  );
}

const chromium = findChromium();
if (chromium === undefined) throw new Error('No Chromium was found: set CHROMIUM_PATH.');
const pages = await servePages();
const browser = await launch(chromium);
try {
  for (const [what, open, key, shown] of [
    ['tap in the list of 300 lines', null, '.tally-line-tap', '.tally-line .number'],
    ['tap on the keys of one of 300 lines', '.tally-line', '[aria-label="Add 1"]', '.number-shown'],
  ] as const) {
    const { page } = await openPage(browser, phone);
    await page.goto(`${pages.url}/counts/c1/assignments/a1`);
    await page.getByRole('button', { name: 'Correct this tally' }).click();
    await page
      .locator('.tally-line')
      .nth(LINES - 1)
      .waitFor();
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    if (open !== null) await page.locator(open).first().click();
    // What was kept for opening is drawn by now.
    await page.waitForTimeout(2000);
    print(`${what}, processor slowed ${SLOWED} times`, await timeTaps(page, key, shown));
    await page.context().close();
  }
} finally {
  await browser.close();
  pages.close();
}
