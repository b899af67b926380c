// `npm run screenshots`: takes the README's pictures from the running demonstration, anew.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from '../../server/build.mjs';
import { root } from '../../server/toolchain/freshness.mjs';
import { findChromium } from '../support/find-chromium.mjs';
import { desk, launch, openPage, phone, settled, signIn } from './browser.mjs';
import { pictureEntryPages } from './entry-pictures.mjs';

const pictures = path.join(root, 'web/pictures');

/** @typedef {{ name: string, roles: string, password: string | null, path: string | null, note: string | null }} SignIn */

/**
 * @param {import('playwright-core').Page} page
 * @param {string} name
 */
async function take(page, name) {
  await settled(page);
  const file = path.join(pictures, `${name}.png`);
  await page.screenshot({ path: file });
  console.log(path.relative(root, file));
}

/**
 * The compiler's desk.
 *
 * @param {import('playwright-core').Page} page
 * @param {string} count address of the count's pages
 */
async function atTheDesk(page, count) {
  await settled(page);
  await take(page, 'disagreements');
  await page.locator('.work-list a', { hasText: 'more than counting error' }).first().click();
  await take(page, 'one-disagreement');
  await page.locator('#pairing-heading').evaluate((heading) => heading.scrollIntoView());
  await take(page, 'pairing-balance');
  await page.goto(`${count}/links`);
  await settled(page);
  await page.getByRole('button', { name: /^Second, / }).click();
  await page.locator('.link-view').evaluate((view) => view.scrollIntoView());
  await take(page, 'double-counts');
  await page.goto(`${count}/agreement`);
  await settled(page);
  // As high as the first grid of names.
  await page.setViewportSize({ ...desk, height: 730 });
  await page.locator('#names').evaluate((heading) => heading.scrollIntoView());
  await take(page, 'agreement');
  await page.setViewportSize(desk);
  await page.goto(`${count}/coverage`);
  await take(page, 'coverage');
  await page.goto(`${count}/compiled`);
  await take(page, 'compiled-count');
  await page.getByRole('button', { name: 'Greater/Lesser Scaup', exact: true }).click();
  await page.getByRole('heading', { name: /^Ledger of/u }).waitFor();
  await take(page, 'ledger');
}

const chromium = findChromium();
if (chromium === undefined) {
  throw new Error('There is no Chromium to take pictures with. Install one, or set CHROMIUM_PATH.');
}
await build(console.log);
const { serve } = await import(path.join(root, 'dist/server/serve.js'));
const folder = mkdtempSync(path.join(tmpdir(), 'countersign-pictures-'));
const server = await serve({
  port: 0,
  databaseUrl: `file:${path.join(folder, 'counts.db')}`,
  demo: true,
  print: () => undefined,
});
const browser = await launch(chromium);
try {
  mkdirSync(pictures, { recursive: true });
  /** @type {readonly SignIn[]} */
  const people = server.signIns;
  const observer = people.find(({ note }) => note !== null);
  const compiler = people.find(({ roles }) => roles.includes('compiler'));
  if (observer === undefined || compiler === undefined) {
    throw new Error('The demonstration has no observer with an open assignment, or no compiler.');
  }
  const field = await openPage(browser, phone);
  await signIn(field.page, server.url, observer);
  await pictureEntryPages(field.page, take);
  const evening = await openPage(browser, desk);
  await signIn(evening.page, server.url, compiler);
  await atTheDesk(evening.page, evening.page.url().replace(/\/[^/]*$/u, ''));
} finally {
  await browser.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
}
