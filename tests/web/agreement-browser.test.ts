import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { accessibilityViolations, desk, phone, settled, sidewaysOverflow } from './browser.mjs';
import { chromium, Demonstration } from './demonstration.js';

/** The agreement of the demonstration once its windows are closed, in a real browser. */
describe.skipIf(chromium === '')('agreement in a browser', () => {
  let demonstration: Demonstration;
  let page: Page;
  let troubles: readonly string[];

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    ({ page, troubles } = await demonstration.open(desk));
    await demonstration.signIn(page, ({ roles }) => roles.includes('leader'));
    await closeWindows();
  }, 240_000);

  afterAll(() => demonstration.close());

  async function closeWindows(): Promise<void> {
    await page.goto(demonstration.url('coverage'));
    await settled(page);
    const ask = page.getByRole('button', { name: /^Close this window/u });
    while ((await ask.count()) > 0) {
      await ask.first().click();
      const confirm = page.getByRole('button', { name: 'Close the window', exact: true });
      await confirm.click();
      await confirm.waitFor({ state: 'detached' });
      await settled(page);
    }
  }

  test.each([
    ['phone', phone],
    ['desk', desk],
  ])(
    'everything folded out is accessible, and nothing is wider than the window: %s',
    async (_, size) => {
      await page.setViewportSize(size);
      await page.goto(demonstration.url('agreement'));
      await settled(page);
      await page.locator('main').getByRole('heading', { name: 'Section by section' }).waitFor();
      await page.locator('details').evaluateAll((all) => {
        for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true;
      });
      expect(await accessibilityViolations(page)).toEqual([]);
      expect(await sidewaysOverflow(page)).toBe(0);
    },
    60_000,
  );

  test('by keyboard, a table is copied as a spreadsheet takes it', async () => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await page.setViewportSize(desk);
    await page.goto(demonstration.url('agreement'));
    await settled(page);
    const region = page.getByRole('region', { name: 'Table: ratios of two observers' });
    await region.focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Copied: ratios of two observers' }).waitFor();
    const text = await page.evaluate(() => navigator.clipboard.readText());
    const rows = text.trimEnd().split('\n');
    const shown = await region.locator('tbody tr').count();
    expect(shown).toBeGreaterThan(2);
    expect(rows.length).toBe(1 + shown);
    for (const row of rows) expect(row.split('\t').length).toBe(1 + 3 * 4);
    // What is copied is what is shown, in full.
    const firstRatio = Number(rows[1]?.split('\t')[1]);
    const firstShown = await region.locator('tbody tr').first().locator('td').first().innerText();
    expect(firstShown.startsWith(firstRatio.toFixed(2))).toBe(true);
  });

  test('an observer has the page too, with nobody’s pair but their own', async () => {
    const own = await demonstration.open(phone);
    await demonstration.signIn(
      own.page,
      ({ roles, name }) => roles === 'observer' && name === 'Bartholomew Quist',
    );
    await own.page.getByRole('link', { name: 'Agreement' }).click();
    await settled(own.page);
    const pictures = own.page.locator('main h3', { hasText: ' : ' });
    expect(await pictures.allInnerTexts()).toEqual(['Bartholomew Quist : Leilani Dvorsky']);
    const text = await own.page.locator('main').innerText();
    for (const stranger of ['Sunniva', 'Yuki', 'Hamid', 'Ambrose']) {
      expect(text).not.toContain(stranger);
    }
    expect(await accessibilityViolations(own.page)).toEqual([]);
    expect(await sidewaysOverflow(own.page)).toBe(0);
    expect(own.troubles).toEqual([]);
  });

  test('nothing went wrong in the page', () => {
    expect(troubles).toEqual([]);
  });
});
