import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  phone,
  settled,
  sidewaysOverflow,
  targetsUnder44,
  violationsInEveryTheme,
} from './browser.mjs';
import { chromium, Demonstration, type OpenPage } from './demonstration.js';

const longTest = 240_000;

/**
 * An observer writes a tally from a phone with everything that the form has, in a real browser on the
 * real server: each test goes on from the one before, as a morning does.
 */
describe.skipIf(chromium === '')('the entry form in a browser', () => {
  let demonstration: Demonstration;
  let observer: OpenPage;
  let form: string;

  beforeAll(async () => {
    demonstration = await Demonstration.start();
    observer = await demonstration.open(phone);
    const { page } = observer;
    await page.clock.setFixedTime(new Date('2027-01-16T08:41:00-05:00'));
    await demonstration.signIn(page, ({ note }) => note !== null);
    await settled(page);
    await page.getByRole('link', { name: 'Begin the tally' }).click();
    await page.getByRole('combobox', { name: 'Add a line' }).waitFor();
    form = page.url();
  }, longTest);

  afterAll(() => demonstration.close());

  /** Every control can be hit with a glove, nothing sticks out, and axe-core finds nothing. */
  async function expectFine(page: Page): Promise<void> {
    await settled(page);
    expect(await targetsUnder44(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toBe(0);
    expect(await violationsInEveryTheme(page)).toEqual([]);
  }

  /** Middle of an element as it lies on the screen. */
  async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
    const box = await page.locator(selector).boundingBox();
    if (box === null) throw new Error(`${selector} is not on the page.`);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }

  /** By keyboard a cross-hair is moved, told in words and set; keys, buttons and fingers enlarge the map. */
  async function seeTheMap(page: Page, where: Locator): Promise<void> {
    const map = page.getByRole('application', { name: /^Map of your section, north up\./u });
    const picture = page.locator('.section-map svg');
    const tapped = await where.innerText();
    await map.press('Shift+ArrowLeft');
    await map.press('ArrowUp');
    const crossHair = page.getByText(
      /^Cross-hair: [\d,]+ m to the .* of Chapel bluff, in West Basin\./u,
    );
    await crossHair.waitFor();
    expect(await where.innerText()).toBe(tapped);
    await map.press('Enter');
    const set = await where.innerText();
    expect(set).not.toBe(tapped);
    expect(await crossHair.innerText()).toContain(set.slice(0, -1));

    await map.press('+');
    expect(await picture.getAttribute('data-enlarged')).toBe('true');
    await map.press('0');
    expect(await picture.getAttribute('data-enlarged')).toBe('false');
    await page.getByRole('button', { name: 'Enlarge the map' }).click();
    await page.getByRole('button', { name: 'Look farther west' }).click();
    expect(await picture.getAttribute('data-enlarged')).toBe('true');
    await page.getByRole('button', { name: 'Whole', exact: true }).click();
    expect(await picture.getAttribute('data-enlarged')).toBe('false');

    const { x, y } = await middleOf(page, '.section-map svg');
    const touch = await page.context().newCDPSession(page);
    const fingers = (apart: number) => [
      { x: x - apart, y },
      { x: x + apart, y },
    ];
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: fingers(30) });
    for (const apart of [40, 60, 90]) {
      await touch.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        touchPoints: fingers(apart),
      });
    }
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.locator('.section-map svg[data-enlarged=true]').waitFor();
    // Two fingers set nothing.
    expect(await where.innerText()).toBe(set);
  }

  async function begin(taxon: string): Promise<void> {
    const field = observer.page.getByRole('combobox', { name: 'Add a line' });
    await field.fill(taxon);
    await field.press('Enter');
    await observer.page.getByRole('button', { name: 'Line done' }).waitFor();
  }

  const press = (name: string | RegExp): Promise<void> =>
    observer.page.getByRole('button', { name, exact: typeof name === 'string' }).click();

  test(
    'a line by taps, with sex, heading and position, under the thumb',
    async () => {
      const { page } = observer;
      await page.getByText('The screen stays on while this page is open.').waitFor();
      await expectFine(page);
      await begin('mall');
      await press('Add 100');
      await press('Add 10');
      await press('Add 10');
      await press('Take 1 away');
      // The keys lie in the lower half of the screen, without scrolling.
      for (const name of ['Add 1', 'Add 100', 'Line done']) {
        const box = await page.getByRole('button', { name, exact: true }).boundingBox();
        expect(box?.y).toBeGreaterThan(phone.height / 2);
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(phone.height);
      }
      await page.getByText('Sex and age').click();
      await page.getByLabel('Males').fill('70');
      await page.getByLabel('Female-type').fill('49');
      await page.getByText('Flock, time and where it went').click();
      expect(await page.getByLabel('Time seen').inputValue()).toBe('08:41');

      // The dial takes a finger or a mouse: straight to the right is east.
      const dial = page.getByRole('slider', { name: 'Heading' });
      await dial.scrollIntoViewIfNeeded();
      const { x, y } = await middleOf(page, '.dial');
      await page.mouse.move(x, y - 40);
      await page.mouse.down();
      await page.mouse.move(x + 40, y, { steps: 4 });
      await page.mouse.up();
      expect(await dial.getAttribute('aria-valuetext')).toBe('90 degrees, east');

      await page.getByText('Where the flock was').click();
      await page.locator('.section-map svg').click({ position: { x: 200, y: 120 } });
      const where = page.getByText(/^[\d,]+ m to the .* of Chapel bluff\.$/u);
      await where.waitFor();
      await seeTheMap(page, where);
      await expectFine(page);
      await press('Line done');
    },
    longTest,
  );

  test(
    'a pair in blocks, a group that was only seen, a stated zero, and birds flying through',
    async () => {
      const { page } = observer;
      await press('Next bird');
      await press('Greater/Lesser Scaup');
      await page.getByText('Blocks', { exact: true }).click();
      await press('50');
      for (let block = 0; block < 6; block += 1) await press('Add a block of 50');
      await expectFine(page);
      await press('Line done');
      await begin('aythya sp');
      await page.getByText('Seen, not counted').click();
      await press('Line done');
      await begin('canv');
      await page.getByText('One by one').click();
      await page.getByText('Keypad').click();
      await press('0');
      await expectFine(page);
      await press('Line done');
      await begin('cang');
      await page.getByLabel('Birds', { exact: true }).fill('40');
      await page.getByText('Flying through').click();
      await press('Line done');
      await press('Add 1 to Canada Goose');
      await expectFine(page);
    },
    longTest,
  );

  test(
    'coverage drawn on the map, conditions, and undo after a reload',
    async () => {
      const { page } = observer;
      await page.getByLabel('Ended', { exact: true }).fill('10:30');
      await page.getByText('Part of it').click();
      await press('Draw it on the map instead');
      const map = page.locator('.section-map svg');
      for (const [x, y] of [
        [4, 4],
        [300, 4],
        [300, 150],
        [4, 150],
      ] as const) {
        await map.click({ position: { x, y } });
      }
      await page
        .locator('.hint')
        .getByText(/^The outline covers [\d.]+ % of the section\.$/u)
        .waitFor();
      await page.getByText('Conditions: wind').click();
      await page.getByLabel('Visibility').selectOption('good');
      await page.getByLabel('Wind, Beaufort force').selectOption('5');
      await page.getByLabel('State of the sea').selectOption('3');
      await page.getByLabel('Ice, per cent of the section').fill('10');
      await page.getByText('Strong', { exact: true }).click();
      await page.getByLabel('Optics').fill('telescope 30×');
      await expectFine(page);
      await press('Add 1 to Canada Goose');
      await page.getByRole('button', { name: /^Canada Goose.*42/u }).waitFor();

      await page.reload();
      await page.getByRole('button', { name: /^Canada Goose.*42/u }).waitFor();
      await press(/Undo/u);
      await page.getByRole('button', { name: /^Canada Goose.*41/u }).waitFor();
      await press(/Undo/u);
      expect(await page.getByLabel('Optics').inputValue()).toBe('');
      await press(/Redo/u);
      expect(await page.getByLabel('Optics').inputValue()).toBe('telescope 30×');
    },
    longTest,
  );

  test(
    'is sent, and the server has exactly that',
    async () => {
      const { page } = observer;
      await press('Look over and send');
      await page.getByRole('heading', { name: 'Look it over' }).waitFor();
      await expectFine(page);
      await press('Send the tally');
      await page.getByText('Sent: 460 birds. Thank you.').waitFor();
      const answer = await page.evaluate(async (query: string) => {
        const response = await fetch('/graphql', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({ query }),
        });
        return (await response.json()) as { data: { count: { myTallies: unknown[] } } };
      }, OWN_TALLY);
      const [tally] = answer.data.count.myTallies;
      expect(tally).toMatchObject({
        start: '2027-01-16T08:41:00-05:00',
        end: '2027-01-16T10:30:00-05:00',
        scope: 'all-waterbirds',
        conditions: {
          visibility: 'good',
          beaufort: 5,
          seaState: 3,
          iceCover: 0.1,
          glare: 'strong',
          disturbance: null,
          optics: 'telescope 30×',
        },
      });
      const { coverage, seenArea, lines } = tally as OwnTally;
      expect(coverage).toBeGreaterThan(0.1);
      expect(coverage).toBeLessThan(0.9);
      // The four corners that were tapped, and the first once more.
      expect(seenArea.map((ring) => ring.length)).toEqual([5]);
      expect(seenArea[0]?.at(-1)).toEqual(seenArea[0]?.[0]);
      const byTaxon = new Map(lines.map((line) => [line.taxon, line]));
      expect(lines).toHaveLength(5);
      const time = '2027-01-16T08:41:00-05:00';
      expect(byTaxon.get('Anas platyrhynchos')).toMatchObject({
        number: 119,
        method: 'one-by-one',
        male: 70,
        female: 49,
        heading: 90,
        time,
      });
      expect(byTaxon.get('Anas platyrhynchos')?.lon).toBeTypeOf('number');
      expect(byTaxon.get('Aythya affinis/marila')).toMatchObject({
        number: 300,
        method: 'block',
        block: 50,
        time,
      });
      expect(byTaxon.get('Aythya sp.')).toMatchObject({ number: null, present: true, time });
      expect(byTaxon.get('Aythya valisineria')).toMatchObject({ number: 0, present: false });
      expect(byTaxon.get('Branta canadensis')).toMatchObject({
        number: 41,
        activity: 'flying-through',
      });
    },
    longTest,
  );

  test(
    'is corrected with a reason, as a new version',
    async () => {
      const { page } = observer;
      await page.clock.setFixedTime(new Date('2027-01-16T10:50:00-05:00'));
      await page.goto(form);
      await page.getByText('Wind force 5 (fresh breeze)', { exact: false }).waitFor();
      await expectFine(page);
      await press('Correct this tally');
      await press('Add 1 to Canvasback');
      // The outline is drawn again as it was.
      await page.locator('.section-map-seen').waitFor();
      expect(await page.locator('.section-map-corner').count()).toBe(4);

      // Two more lines from the paper sheet, by keyboard alone.
      await press('Type in a paper sheet');
      await page.getByLabel('Row 6, code or name').waitFor();
      for (const key of ['buff', 'Tab', '7', 'Enter', 'rednecked grbe', 'Enter', 'Enter', '2']) {
        if (/^(?:Tab|Enter)$/u.test(key)) await page.keyboard.press(key);
        else await page.keyboard.type(key);
      }
      await page.getByText('Red-necked Grebe', { exact: true }).waitFor();
      await expectFine(page);
      await press('Sheet done');
      await press('Look over and send');
      await page.getByRole('alert').getByText('Say why the tally is corrected').waitFor();
      await page.getByLabel('Why is the tally corrected?').fill('One was behind the pier.');
      await press('Look over and send');
      await press('Send the correction');
      await page.getByText('Sent: 470 birds. Thank you.').waitFor();
      await page.getByText('as version 2', { exact: false }).waitFor();
      expect(observer.troubles).toEqual([]);
    },
    longTest,
  );
});

interface OwnTally {
  readonly coverage: number;
  readonly seenArea: readonly (readonly (readonly number[])[])[];
  readonly lines: readonly Line[];
}

interface Line {
  readonly taxon: string;
  readonly lon: number | null;
}

const OWN_TALLY = `{ count(id: "lake-emberlow") { myTallies {
  start end scope coverage seenArea
  conditions { visibility beaufort seaState iceCover glare disturbance optics }
  lines { taxon number present method block male female activity heading time lon lat }
} } }`;
