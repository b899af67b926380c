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
} from './browser.mjs';
import { chromium, Demonstration, type OpenPage } from './demonstration.js';

/**
 * Pages of the desk in a real browser, on one server: to start that and a browser takes longer than
 * most of what they are asked.
 */
describe.skipIf(chromium === '')('the desk in a browser', () => {
  let demonstration: Demonstration;
  let compiler: OpenPage;
  let leader: OpenPage;

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    compiler = await demonstration.open(desk);
    await demonstration.signIn(compiler.page, ({ roles }) => roles.includes('compiler'));
    leader = await demonstration.open(desk);
    await demonstration.signIn(leader.page, ({ roles }) => roles.includes('leader'));
  }, 240_000);

  afterAll(() => demonstration.close());

  /** The double counts of the demonstration, also by keyboard alone. */
  describe('double counts', () => {
    let page: Page;
    let troubles: readonly string[];

    beforeAll(() => {
      ({ page, troubles } = compiler);
    });

    /** Goes on with the Tab key until the focus is where it is wanted. */
    async function tabTo(name: RegExp): Promise<void> {
      for (let step = 0; step < 80; step += 1) {
        const focused = await page.evaluate(() => {
          const element = document.activeElement;
          const label = element instanceof HTMLInputElement && element.labels?.[0]?.textContent;
          const area = element instanceof HTMLTextAreaElement && element.labels[0]?.textContent;
          if (element === null || element === document.body) return '';
          return label || area || element.textContent;
        });
        if (name.test(focused)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`The Tab key never reached ${String(name)}.`);
    }

    /** Boxes of the map's texts that share more than a hair's breadth. */
    async function coveredLabels(): Promise<string[]> {
      return page.locator('.map .map-text').evaluateAll((texts) => {
        const boxes = texts.map((text) => ({
          words: text.textContent,
          box: text.getBoundingClientRect(),
        }));
        return boxes.flatMap(({ words, box }, index) =>
          boxes
            .slice(index + 1)
            .filter(
              (other) =>
                Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left) > 2 &&
                Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top) > 4,
            )
            .map((other) => `${words} / ${other.words}`),
        );
      });
    }

    test.each([
      ['phone', phone],
      ['narrowest', narrowest],
      ['desk', desk],
    ])(
      'every link and extent is accessible, fits, and no text of the map covers another: %s',
      async (_, size) => {
        await resize(page, size);
        await follow(page, demonstration.url('links'));
        const options = page.locator('.link-option input');
        // The scenario has a raft that flies, one that swims, and one seen from both sides.
        expect(await options.count()).toBeGreaterThanOrEqual(3);
        for (const option of await options.all()) {
          await option.check();
          for (const extent of ['sections', 'near', 'whole']) {
            await page.getByLabel('The map shows').selectOption(extent);
            expect(await page.locator('.map .map-text').count()).toBeGreaterThan(4);
            expect(await coveredLabels()).toEqual([]);
          }
          expect(await sidewaysOverflow(page)).toBe(0);
        }
        await page.locator('main details').evaluateAll((all) => {
          for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true;
        });
        expect(await accessibilityViolations(page)).toEqual([]);
        expect(await sidewaysOverflow(page)).toBe(0);
      },
      120_000,
    );

    test('by keyboard alone: choose a link, scrub to its sightings, confirm it', async () => {
      await page.setViewportSize(phone);
      await page.goto(demonstration.url('links'));
      await settled(page);
      await tabTo(/East Basin .* may be the .* South Basin/u);
      await page.keyboard.press('ArrowDown');
      const swum = page.getByRole('radio', { name: /South Basin .* Outlet Bay/u });
      expect(await swum.isChecked()).toBe(true);

      await tabTo(/^Show what was seen by/u);
      await page.keyboard.press('Home');
      await page.getByText(/^By 08:00, .* neither sighting among them yet/u).waitFor();
      for (let minute = 0; minute < 43; minute += 1) await page.keyboard.press('ArrowRight');
      await page
        .getByText(/^By 08:43, .* the first sighting among them, the second not/u)
        .waitFor();
      expect(await page.locator('.map-flock-second').count()).toBe(1); // on the time line alone
      await page.keyboard.press('End');
      await page.getByText(/^By 11:00, .* both sightings among them/u).waitFor();
      expect(await page.locator('.map-flock-second').count()).toBe(2);

      await tabTo(/^Reason/u);
      await page.keyboard.type('Heading, time and number fit a raft that drifted south.');
      await tabTo(/^Confirm/u);
      await page.keyboard.press('Enter');
      // The compiler counted in South Basin herself.
      await page.getByText(/^◐ A ruling waits for a second person/u).waitFor();
      await page.getByText('“Heading, time and number fit a raft that drifted south.”').waitFor();
      expect(await accessibilityViolations(page)).toEqual([]);

      // On to the next link without a ruling.
      await tabTo(/^Next double count/u);
      await page.keyboard.press('Enter');
      expect(await swum.isChecked()).toBe(false);
      expect(troubles).toEqual([]);
    }, 120_000);
  });

  /** The agreement of the demonstration once its windows are closed. */
  describe('agreement', () => {
    let page: Page;
    let troubles: readonly string[];

    beforeAll(async () => {
      ({ page, troubles } = leader);
      await closeWindows();
    }, 240_000);

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
        await resize(page, size);
        await follow(page, demonstration.url('agreement'));
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
      await resize(page, desk);
      await follow(page, demonstration.url('agreement'));
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
});
