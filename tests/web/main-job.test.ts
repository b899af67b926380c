import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  accessibilityViolations,
  desk,
  follow,
  narrowest,
  phone,
  resize,
  settled,
  sidewaysOverflow,
  violationsInEveryTheme,
} from './browser.mjs';
import { chromium, Demonstration, type OpenPage } from './demonstration.js';
import { chooseFrench, expectFrench, leftInEnglish } from './left-in-english.js';

/** Many pages in one test, on machines that have other things to do. */
const longTest = 240_000;

/**
 * The main job in a real browser, on the real server and a database of its own: each test goes on
 * from the one before, as the day does.
 */
describe.skipIf(chromium === '')('the main job in a browser', () => {
  let demonstration: Demonstration;
  let observer: OpenPage;
  let compiler: OpenPage;
  let leader: OpenPage;
  let stranger: OpenPage;

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    observer = await demonstration.open(phone);
    compiler = await demonstration.open(desk);
    leader = await demonstration.open(desk);
  }, 240_000);

  afterAll(() => demonstration.close());

  async function expectFine(page: Page): Promise<void> {
    await settled(page);
    expect(await accessibilityViolations(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toBe(0);
  }

  test('an observer submits a tally with a pair and a group from a phone', async () => {
    const { page } = observer;
    await demonstration.signIn(page, ({ note }) => note !== null);
    await expectFine(page);
    await page.getByRole('link', { name: 'Begin the tally' }).click();
    await expectFine(page);

    // The pair: a species first, then left as the pair; the number in blocks.
    await page.getByRole('button', { name: 'Greater Scaup', exact: true }).click();
    await page.getByRole('button', { name: 'Greater/Lesser Scaup', exact: true }).click();
    for (let block = 0; block < 9; block += 1) {
      await page.getByRole('button', { name: 'Add 100' }).click();
    }
    await page.getByText('In blocks').click();
    await page.getByLabel('Birds in one block').fill('100');
    await expectFine(page);
    await page.getByRole('button', { name: 'Line done' }).click();

    // The group, typed.
    const addLine = page.getByRole('combobox', { name: 'Add a line' });
    await addLine.fill('aythya sp');
    await addLine.press('Enter');
    await page.getByLabel('Birds', { exact: true }).fill('250');
    await page.getByRole('button', { name: 'Line done' }).click();

    // A mistake is named at its field, and then mended.
    await page.getByRole('button', { name: 'Look over and send' }).click();
    await expect(page.getByRole('alert').innerText()).resolves.toContain('Say when you began');
    await expectFine(page);
    await page.getByLabel('Began', { exact: true }).fill('08:20');
    await page.getByLabel('Ended', { exact: true }).fill('10:35');
    await page.getByRole('button', { name: 'Look over and send' }).click();
    await page.getByRole('heading', { name: 'Look it over' }).waitFor();
    await expectFine(page);
    await page.getByRole('button', { name: 'Send the tally' }).click();
    await page.getByText('Sent: 1,150 birds. Thank you.').waitFor();
    await expectFine(page);
    // It stays to be read, though by now the page knows the tally from the server.
    expect(await page.getByText('Sent: 1,150 birds. Thank you.').isVisible()).toBe(true);
  });

  test('targets on the entry pages are at least 44 pixels high', async () => {
    const { page } = observer;
    await page.goto(demonstration.url('assignments'));
    await settled(page);
    await page.getByRole('link', { name: 'Look at it or correct it' }).first().click();
    await page.getByRole('button', { name: 'Correct this tally' }).click();
    const heights = await page
      .locator(
        'main button, main input:not([type=radio]):not([type=checkbox]), main select, main summary',
      )
      .evaluateAll((targets) =>
        targets
          .filter((target) => target.checkVisibility())
          .map((target) => ({
            name: target.textContent,
            height: target.getBoundingClientRect().height,
          })),
      );
    expect(heights.length).toBeGreaterThan(10);
    expect(heights.filter(({ height }) => height < 44)).toEqual([]);
    await page.getByRole('button', { name: 'Leave the tally as it was submitted' }).click();
  });

  test(
    'a compiler sees the new disagreement and rules on it by keyboard',
    async () => {
      const { page } = compiler;
      await demonstration.signIn(page, ({ roles }) => roles.includes('compiler'));
      await expectFine(page);
      // The observer's 1,150 birds meet the other tally of the same section.
      const fresh = page.locator('.work-list a', { hasText: /1,150/u }).first();
      await fresh.waitFor();
      const sentence = await fresh.innerText();
      await page.keyboard.press('j');
      for (let step = 0; step < 60; step += 1) {
        const focused = await page.evaluate(() => document.activeElement?.textContent ?? '');
        if (focused === sentence) break;
        await page.keyboard.press('j');
      }
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(sentence);
      await page.keyboard.press('Enter');
      await page.getByText(sentence).first().waitFor();
      await expectFine(page);

      // Both bars and their table say the same observer totals.
      const balance = await page.locator('.pairing .sentence, .sentence').allInnerTexts();
      expect(balance.some((text) => text.startsWith('Of ') && text.includes('1,150'))).toBe(true);

      await page.keyboard.press('r');
      await page.getByRole('button', { name: /own lines, 1,150/u }).click();
      await page
        .getByLabel('Reason')
        .fill('The second observer stood nearer, with the light behind.');
      await page.getByRole('button', { name: 'Give this ruling' }).click();
      await page.getByText('A ruling is given.').waitFor();
      await expectFine(page);
      await page.goto(demonstration.url('disagreements'));
      await settled(page);
      await page.getByLabel('Show settled').check();
      const row = page.locator('.work-list tr', { hasText: sentence });
      await expect(row.innerText()).resolves.toContain('✓ settled by');
    },
    longTest,
  );

  test(
    'the leader closes the window, in the middle of a correction',
    async () => {
      // The observer is in the middle of a correction.
      await observer.page.getByRole('button', { name: 'Correct this tally' }).click();
      await observer.page.getByLabel('Why is the tally corrected?').fill('One block too many.');
      const { page } = leader;
      await demonstration.signIn(page, ({ roles }) => roles.includes('leader'));
      await page.goto(demonstration.url('coverage'));
      await expectFine(page);
      await page.getByRole('button', { name: 'Close this window' }).click();
      await expectFine(page);
      await page.getByRole('button', { name: 'Close the window' }).click();
      await page.getByText(/08:00 to 11:00: closed/u).waitFor();

      // What is refused is told with its reason, and stays on the phone.
      await observer.page.getByRole('button', { name: 'Look over and send' }).click();
      await observer.page.getByRole('button', { name: 'Send the correction' }).click();
      await observer.page
        .getByText(/its windows are closed/u)
        .first()
        .waitFor();
      await settled(observer.page);
      expect(await violationsInEveryTheme(observer.page)).toEqual([]);
      await observer.page.goto(demonstration.url('assignments'));
      await observer.page
        .getByText(/its windows are closed/u)
        .first()
        .waitFor();
      await settled(observer.page);
      expect(await violationsInEveryTheme(observer.page)).toEqual([]);
    },
    longTest,
  );

  test(
    'possible double counts are ruled on, and seconded where the compiler counted',
    async () => {
      const { page } = compiler;
      const list = demonstration.url('disagreements');
      const rowsThat = (on: Page, ruling: RegExp) =>
        on
          .locator('.work-list tbody tr')
          .filter({ has: on.locator('td:last-child', { hasText: ruling }) });
      let given = 0;
      for (;;) {
        await follow(page, list);
        await page.getByLabel('Severity').selectOption('Serious');
        const open = rowsThat(page, /^open/u).getByRole('link');
        if ((await open.count()) === 0) break;
        await open.first().click();
        await settled(page);
        await page.locator('.proposal').first().click();
        await page.getByLabel('Reason').fill('Times, heading and numbers fit.');
        await page.getByRole('button', { name: 'Give this ruling' }).click();
        await page.getByText('A ruling is given.').waitFor();
        given += 1;
      }
      // The scenario has a raft that swims, one that flies, and one seen from both sides.
      expect(given).toBeGreaterThanOrEqual(3);

      const other = leader.page;
      let seconded = 0;
      for (;;) {
        await follow(other, list);
        const waiting = rowsThat(other, /waits for a second person/u).getByRole('link');
        if ((await waiting.count()) === 0) break;
        await waiting.first().click();
        await settled(other);
        await other.getByRole('button', { name: 'Second this ruling' }).click();
        await other.getByText(/seconded by/u).waitFor();
        seconded += 1;
      }
      // The compiler counted in the section that both rafts reach.
      expect(seconded).toBeGreaterThanOrEqual(2);
      await follow(page, demonstration.url('links'));
      await expectFine(page);
    },
    longTest,
  );

  test('the compiler signs off, and the compiled count and its ledger add up', async () => {
    const { page } = compiler;
    await page.goto(demonstration.url('compiled'));
    await settled(page);
    expect(await page.locator('.open-matters li').allTextContents()).toEqual([]);
    await page.getByText('Nothing stands in the way.').waitFor();
    await page.getByRole('button', { name: 'Sign off as compiler' }).click();
    await page.getByText(/^Signed by/u).waitFor();
    await expectFine(page);

    const numberOf = (text: string): number =>
      Number(text.replaceAll(/[^\d−-]/gu, '').replace('−', '-'));
    const rows = await page.locator('table.compiled tbody td.compiled-number').allInnerTexts();
    const total = numberOf(await page.locator('table.compiled tfoot .compiled-number').innerText());
    expect(rows.length).toBeGreaterThan(30);
    expect(rows.map(numberOf).reduce((sum, number) => sum + number, 0)).toBe(total);

    const line = page
      .locator('table.compiled tbody tr', { hasText: 'Aythya affinis/marila' })
      .first();
    const compiled = numberOf(await line.locator('.compiled-number').innerText());
    await line.getByRole('button').click();
    await page.getByRole('heading', { name: /^Ledger of/u }).waitFor();
    await settled(page);
    const terms = await page.locator('.ledger-sum tbody td.number').allInnerTexts();
    expect(terms.length).toBeGreaterThan(1);
    expect(terms.map(numberOf).reduce((sum, number) => sum + number, 0)).toBe(compiled);
    await expectFine(page);
  });

  /** In every theme, by phone and desk axe-core finds nothing, and on the narrowest phone all of it fits. */
  async function expectNothingFound(page: Page, name: string): Promise<void> {
    await settled(page);
    const found = await violationsInEveryTheme(page);
    await resize(page, narrowest);
    const overflow = await sidewaysOverflow(page);
    await page.setViewportSize(desk);
    expect({ name, found, overflow }).toEqual({ name, found: [], overflow: 0 });
  }

  async function foldOut(page: Page): Promise<void> {
    await page.locator('main details').evaluateAll((all) => {
      for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true;
    });
  }

  test.each([
    'assignments',
    'coverage',
    'disagreements',
    'links',
    'agreement',
    'compiled',
    'audit',
    'no-such-page',
  ])(
    'every page is accessible in every theme, and fits: %s',
    async (name) => {
      const { page } = compiler;
      await follow(page, demonstration.url(name));
      // Folded out the agreement page is looked at by a test of its own.
      if (name !== 'agreement') await foldOut(page);
      await expectNothingFound(page, name);
    },
    longTest,
  );

  test(
    'so are an open ledger and one disagreement',
    async () => {
      const { page } = compiler;
      await follow(page, demonstration.url('compiled'));
      await page.getByRole('button', { name: 'Greater/Lesser Scaup', exact: true }).click();
      await page.getByRole('heading', { name: /^Ledger of/u }).waitFor();
      await expectNothingFound(page, 'compiled, with a ledger open');
      await follow(page, demonstration.url('disagreements'));
      await page.getByLabel('Show settled').check();
      await page.locator('.work-list a', { hasText: /1,150/u }).first().click();
      await settled(page);
      await foldOut(page);
      await expectNothingFound(page, 'one disagreement');
    },
    longTest,
  );

  test(
    'so are the pages of a leader, and those of whoever is not signed in',
    async () => {
      for (const name of ['people', '/counts', '/import', '/plan']) {
        await follow(leader.page, demonstration.url(name));
        await expectNothingFound(leader.page, name);
      }
      stranger = await demonstration.open(desk);
      await stranger.page.goto(demonstration.url('/sign-in'));
      for (const name of ['/sign-in', '/invite/none']) {
        await follow(stranger.page, demonstration.url(name));
        await expectNothingFound(stranger.page, name);
      }
      await stranger.page.getByRole('button', { name: 'Open my assignments' }).click();
      await stranger.page.getByText('Ask the leader of the count').waitFor();
      await expectNothingFound(stranger.page, 'an invite that is refused');
    },
    longTest,
  );

  test(
    'whoever chose French has French pages, which are accessible and fit a phone',
    async () => {
      // What the check is worth: before the choice the same page is found out.
      await follow(stranger.page, demonstration.url('/sign-in'));
      expect(await leftInEnglish(stranger.page)).toContain('For leaders and compilers of a count.');
      await chooseFrench(stranger.page);
      await expectFrench(stranger.page, 'sign-in');

      await chooseFrench(observer.page);
      await expectFrench(observer.page, 'assignments');
      await observer.page.locator('.assignment a[href*="/assignments/"]').first().click();
      await observer.page.getByRole('button', { name: 'Relire et envoyer' }).waitFor();
      await expectFrench(observer.page, 'tally');

      await chooseFrench(compiler.page);
      // In the middle of a page nothing of it stays as it was.
      await expectFrench(compiler.page, 'disagreement');
      await follow(compiler.page, demonstration.url('/counts'));
      await expectFrench(compiler.page, 'counts');
      // What the engine found and people did, on pages that begin in French.
      for (const name of ['disagreements', 'links', 'compiled', 'audit', 'agreement']) {
        await compiler.page.goto(demonstration.url(name));
        await compiler.page.locator('main h1').waitFor();
        await settled(compiler.page);
        const left = await leftInEnglish(compiler.page, 'messages and sayings');
        expect({ name, left }).toEqual({ name, left: [] });
      }
    },
    longTest,
  );

  test('nothing went wrong in any of the pages, and nothing was fetched from elsewhere', () => {
    const pages = [observer, compiler, leader, stranger];
    expect(pages.flatMap(({ troubles }) => troubles)).toEqual([]);
    expect(pages.flatMap(({ fetchedFrom }) => [...fetchedFrom])).toEqual(
      pages.map(() => new URL(demonstration.url('/')).origin),
    );
  });

  test('the form opens without a network, from what the phone kept', async () => {
    const { page } = await demonstration.open(phone, true);
    await demonstration.signIn(page, ({ roles }) => roles.includes('compiler'));
    await page.goto(demonstration.url('assignments'));
    await settled(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    // Once more with the worker in charge, so that it has seen every file.
    await page.reload();
    await settled(page);
    await page.context().setOffline(true);
    await page.reload();
    await page.getByRole('heading', { name: 'My assignments' }).waitFor();
    await page.getByText('No connection. What you enter is kept on this device.').waitFor();
    // They come from the phone's own database, a moment after the page.
    await page.locator('.assignment').first().waitFor();
    await page.context().close();
  });
});
