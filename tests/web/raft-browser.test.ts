import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  desk,
  narrowest,
  phone,
  resize,
  settled,
  sidewaysOverflow,
  violationsInEveryTheme,
} from './browser.mjs';
import { chromium, Demonstration } from './demonstration.js';

const longTest = 120_000;

/** A mixed raft and field marks on an observer's phone: each test goes on from the one before. */
describe.skipIf(chromium === '')('a raft and field marks in a browser', () => {
  let demonstration: Demonstration;
  let page: Page;
  let troubles: readonly string[];

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    ({ page, troubles } = await demonstration.open(phone));
    await demonstration.signIn(page, ({ note }) => note !== null);
    await page.getByRole('link', { name: 'Begin the tally' }).click();
    await settled(page);
  }, 240_000);

  afterAll(() => demonstration.close());

  /** In each theme, from the narrowest window to the desk. */
  async function expectFine(): Promise<void> {
    await settled(page);
    for (const size of [narrowest, desk, phone]) {
      await resize(page, size);
      expect(await sidewaysOverflow(page), `${size.width} px`).toBe(0);
    }
    expect(await violationsInEveryTheme(page)).toEqual([]);
  }

  async function scanFor(taxon: string): Promise<void> {
    const field = page.getByRole('combobox', { name: 'Scan for' });
    await field.fill(taxon);
    await field.press('Enter');
  }

  async function tap(english: string, times: number): Promise<void> {
    const bird = page.getByRole('button', { name: new RegExp(`^${english} \\d+ in sample`, 'u') });
    for (let k = 0; k < times; k += 1) await bird.click();
  }

  test(
    'a raft is scanned, seen as it grows, and becomes lines',
    async () => {
      await page.getByRole('button', { name: 'Start a mixed raft' }).click();
      await page.getByLabel('Birds in the whole raft').fill('640');
      await scanFor('greater scaup');
      await page.getByRole('button', { name: 'Scan for another taxon' }).click();
      await scanFor('lesser scaup');
      await page.getByRole('button', { name: 'Add Greater/Lesser Scaup', exact: true }).click();
      await tap('Greater Scaup', 14);
      await tap('Lesser Scaup', 8);
      await tap('Greater/Lesser Scaup', 5);
      await page.getByRole('button', { name: 'Next sample' }).click();
      await tap('Greater Scaup', 12);
      await tap('Lesser Scaup', 6);
      await tap('Greater/Lesser Scaup', 7);
      await page.getByText('If the birds left at a pair or group are shared out').click();
      await page.getByText('Of 52 birds in 2 samples: 50 % Greater Scaup').waitFor();
      await expectFine();
      const heights = await page
        .locator('.line-editor button, .line-editor summary, .line-editor input[type=text]')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(heights.length).toBeGreaterThan(10);
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      await page.getByRole('button', { name: 'Turn into tally lines' }).click();
      await page.getByText('2 scan samples, in the tally lines').waitFor();
      await expectFine();
    },
    longTest,
  );

  test(
    'marks are ticked, and say what they leave',
    async () => {
      await page.getByRole('combobox', { name: 'Add a line' }).fill('greater scaup');
      await page.getByRole('combobox', { name: 'Add a line' }).press('Enter');
      await page.getByLabel('Birds', { exact: true }).fill('6');
      await page.getByText('Field marks seen', { exact: true }).click();
      const bill = page.getByRole('group', { name: 'Bill' });
      await bill.getByText('blue-grey with black only at the nail').click();
      await page.getByText('The marks fit Lesser Scaup as well as Greater Scaup.').waitFor();
      await expectFine();
      await page.getByRole('button', { name: 'Leave it as Greater/Lesser Scaup' }).click();
      await page.getByText('The marks fit Greater/Lesser Scaup.').waitFor();
      await expectFine();
      await page.getByRole('button', { name: 'Line done' }).click();
      expect(troubles).toEqual([]);
    },
    longTest,
  );
});
