import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  accessibilityViolations,
  desk,
  narrowest,
  phone,
  settled,
  sidewaysOverflow,
} from './browser.mjs';
import { chromium, Demonstration } from './demonstration.js';

/** The double counts of the demonstration, in a real browser and by keyboard alone. */
describe.skipIf(chromium === '')('double counts in a browser', () => {
  let demonstration: Demonstration;
  let page: Page;
  let troubles: readonly string[];

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    ({ page, troubles } = await demonstration.open(desk));
    await demonstration.signIn(page, ({ roles }) => roles.includes('compiler'));
  }, 240_000);

  afterAll(() => demonstration.close());

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
      await page.setViewportSize(size);
      await page.goto(demonstration.url('links'));
      await settled(page);
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
      for (const summary of await page.locator('main summary').all()) await summary.click();
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
    await page.getByText(/^By 08:43, .* the first sighting among them, the second not/u).waitFor();
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
