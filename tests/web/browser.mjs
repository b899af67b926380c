// A real Chromium for the browser tests and the README's pictures.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';

const axeSource = readFileSync(
  createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  'utf8',
);

/** The phone at the shore and the desk in the evening, in CSS pixels. */
export const phone = { width: 390, height: 844 };
export const desk = { width: 1280, height: 900 };
/** The narrowest that a page must fit (WCAG 2.2, 1.4.10 Reflow). */
export const narrowest = { width: 320, height: 720 };

/** Nothing is fetched, reported or updated while the tests run. */
export const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** @param {string} executablePath */
export async function launch(executablePath) {
  return chromium.launch({ executablePath, args: flags });
}

/**
 * What each page is still waiting for.
 *
 * @type {WeakMap<import('playwright-core').Page, Set<import('playwright-core').Request>>}
 */
const openRequests = new WeakMap();

/**
 * A page of its own, with its own cookies; what goes wrong in it is collected, and which servers it asks
 * for anything.
 *
 * @param {import('playwright-core').Browser} browser
 * @param {{ width: number, height: number }} size
 * @param {{ keepsPages?: boolean }} [options] `keepsPages`: with the service worker
 */
export async function openPage(browser, size, options = {}) {
  const context = await browser.newContext({
    viewport: size,
    serviceWorkers: options.keepsPages === true ? 'allow' : 'block',
    reducedMotion: 'reduce',
    locale: 'en-CA',
    timezoneId: 'America/Toronto',
  });
  const page = await context.newPage();
  /** @type {Set<import('playwright-core').Request>} */
  const open = new Set();
  openRequests.set(page, open);
  /** @type {Set<string>} */
  const fetchedFrom = new Set();
  page.on('request', (request) => {
    open.add(request);
    fetchedFrom.add(new URL(request.url()).origin);
  });
  page.on('requestfinished', (request) => open.delete(request));
  page.on('requestfailed', (request) => open.delete(request));
  /** @type {string[]} */
  const troubles = [];
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  return { page, troubles, fetchedFrom };
}

/**
 * Signs in as the demonstration prints it: by password, or by an invite link.
 *
 * @param {import('playwright-core').Page} page
 * @param {string} url of the server
 * @param {{ name: string, password: string | null, path: string | null }} person
 */
export async function signIn(page, url, person) {
  if (person.path === null) {
    await page.goto(`${url}/sign-in`);
    await page.getByLabel('Your name').fill(person.name);
    await page.getByLabel('Password').fill(person.password ?? '');
    await page.getByRole('button', { name: 'Sign in' }).click();
  } else {
    await page.goto(url + person.path);
    await page.getByRole('button', { name: 'Open my assignments' }).click();
  }
  await page.waitForURL(/\/counts\/[^/]+\/./u);
}

/** How often in a row a page has to be found at rest: an answer may lead to another question. */
const TIMES_AT_REST = 3;

/**
 * Waits until the page waits for nothing more and nothing on it is a placeholder.
 *
 * @param {import('playwright-core').Page} page as opened by `openPage`
 */
export async function settled(page) {
  const end = Date.now() + 60_000;
  await page.waitForLoadState('load');
  for (let atRest = 0; atRest < TIMES_AT_REST;) {
    const placeholders = await page.evaluate(async () => {
      // Two frames: what has arrived is drawn, and whatever it asks for has been asked.
      await new Promise((drawn) =>
        globalThis.requestAnimationFrame(() => globalThis.requestAnimationFrame(drawn)),
      );
      return globalThis.document.querySelectorAll('.skeleton').length;
    });
    const isAtRest = placeholders === 0 && openRequests.get(page)?.size === 0;
    atRest = isAtRest ? atRest + 1 : 0;
    if (Date.now() > end) {
      const open = [...(openRequests.get(page) ?? [])].map((request) => request.url());
      throw new Error(
        `The page ${page.url()} never came to rest: ${placeholders} placeholders; it waits for ${open.join(', ') || 'nothing'}.`,
      );
    }
  }
}

/**
 * Goes to another page of the app as a link in it does: the app is not loaded anew, and neither is
 * axe-core. Addresses that are typed are opened by `page.goto`.
 *
 * @param {import('playwright-core').Page} page with the app in it
 * @param {string} url
 */
export async function follow(page, url) {
  await page.evaluate((to) => globalThis.history.pushState(null, '', to), url);
  await settled(page);
}

/**
 * Changes the size of the window and waits until the page is drawn in it.
 *
 * @param {import('playwright-core').Page} page
 * @param {{ width: number, height: number }} size
 */
export async function resize(page, size) {
  await page.setViewportSize(size);
  // Drawings are as wide as their box two frames later.
  await page.evaluate(
    () =>
      new Promise((drawn) =>
        globalThis.requestAnimationFrame(() => globalThis.requestAnimationFrame(drawn)),
      ),
  );
}

/** What of a page hangs on the theme: its colours, and the size of its targets. */
const RULES_OF_THEMES = ['color-contrast', 'link-in-text-block', 'target-size'];

/**
 * What axe-core finds on a page in each theme, at the width of a phone and of a desk, one line a
 * violation. Every rule runs by paper's theme; by the others those that hang on the theme.
 *
 * @param {import('playwright-core').Page} page
 * @returns {Promise<string[]>}
 */
export async function violationsInEveryTheme(page) {
  /** @type {string[]} */
  const found = [];
  const before = page.viewportSize() ?? phone;
  const theme = page.getByLabel('Colours of the page');
  const chosen = await theme.inputValue();
  for (const size of [phone, desk]) {
    await resize(page, size);
    for (const name of ['light', 'sunlight', 'night']) {
      await theme.selectOption(name);
      await page.locator(`html[data-theme=${name}]`).waitFor({ state: 'attached' });
      await bringIntoView(page);
      const violations = await violationsInView(page, name === 'light' ? null : RULES_OF_THEMES);
      found.push(...violations.map((one) => `${name}, ${size.width} px: ${one}`));
    }
  }
  await theme.selectOption(chosen);
  await page.setViewportSize(before);
  return found;
}

/**
 * What axe-core finds against WCAG 2.2 A and AA, one line a violation.
 *
 * @param {import('playwright-core').Page} page
 * @returns {Promise<string[]>}
 */
export async function accessibilityViolations(page) {
  const size = page.viewportSize();
  await bringIntoView(page);
  const violations = await violationsInView(page, null);
  if (size !== null) await page.setViewportSize(size);
  return violations;
}

/**
 * The whole page in view: what happens to lie half behind the foot of the screen is scrolled by
 * whoever needs it, and is no target that is too small. A window with the whole page in it already
 * stays as it is.
 *
 * @param {import('playwright-core').Page} page
 */
async function bringIntoView(page) {
  const size = page.viewportSize();
  const { height, isHighEnough } = await page.evaluate(() => {
    const { scrollHeight } = globalThis.document.documentElement;
    const last = globalThis.document.querySelector('main > :last-child');
    const foot = (last?.getBoundingClientRect().bottom ?? Infinity) + globalThis.scrollY;
    return { height: scrollHeight, isHighEnough: foot + 400 <= globalThis.innerHeight };
  });
  if (size === null || isHighEnough) return;
  // With some to spare: text and targets are a fifth larger in the next theme.
  await page.setViewportSize({ width: size.width, height: Math.ceil(height * 1.25) + 400 });
}

/**
 * @param {import('playwright-core').Page} page
 * @param {readonly string[] | null} rules `null`: all that there are
 * @returns {Promise<string[]>}
 */
async function violationsInView(page, rules) {
  if (await page.evaluate(() => !('axe' in globalThis))) await page.evaluate(axeSource);
  return page.evaluate(async (only) => {
    const { axe } = /** @type {{ axe: typeof import('axe-core') }} */ (
      /** @type {unknown} */ (globalThis)
    );
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await axe.run(globalThis.document, {
      runOnly: only === null ? tags : { type: 'rule', values: [...only] },
      // Every rule runs; what passes is not written up.
      resultTypes: ['violations'],
    });
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
    );
  }, rules);
}

/**
 * How many pixels the page is wider than its window; 0 if nobody has to scroll sideways.
 *
 * @param {import('playwright-core').Page} page
 * @returns {Promise<number>}
 */
export async function sidewaysOverflow(page) {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = globalThis.document.documentElement;
    return scrollWidth - clientWidth;
  });
}

/**
 * Controls of a page that are lower or narrower than 44 pixels, one line each. A radio
 * button or a tick is as large as the label around it; a link inside a sentence is text.
 *
 * @param {import('playwright-core').Page} page
 * @returns {Promise<string[]>}
 */
export async function targetsUnder44(page) {
  return page.evaluate(() => {
    const controls = globalThis.document.querySelectorAll(
      ':is(button, input, select, textarea, summary, a, [role=slider], [role=option])',
    );
    return [...controls].flatMap((control) => {
      if (!control.checkVisibility()) return [];
      if (control.tagName === 'A' && control.closest('p, .foot') !== null) return [];
      // Shown only to whoever comes to it by keyboard.
      if (control.matches('.skip')) return [];
      const isTick = control.matches('input:is([type=radio], [type=checkbox])');
      const target = (isTick ? control.closest('label') : null) ?? control;
      const { width, height } = target.getBoundingClientRect();
      // Half a pixel is rounding.
      if (width > 43.5 && height > 43.5) return [];
      return [`${control.tagName} ${control.textContent} ${width} × ${height}`];
    });
  });
}
