// The pictures of the observer's pages, each at the width of a phone, a tablet and a desk.
import { desk, phone } from './browser.mjs';

const tablet = { width: 820, height: 1180 };

const widths = [phone, tablet, desk];

/**
 * @param {import('playwright-core').Page} page of an observer who has a tally to submit, on their
 *   assignments
 * @param {(page: import('playwright-core').Page, name: string) => Promise<void>} take
 */
export async function pictureEntryPages(page, take) {
  /** @param {string} name @param {string} [from] what stands at the upper edge */
  const picture = async (name, from) => {
    for (const size of widths) {
      await page.setViewportSize(size);
      if (from !== undefined) {
        await page
          .locator(from)
          .first()
          .evaluate((element) => element.scrollIntoView());
      }
      await take(page, `${name}-${size.width}`);
    }
  };
  /** @param {string} name */
  const press = (name) => page.getByRole('button', { name, exact: true }).click();
  /** @param {string} taxon */
  const begin = async (taxon) => {
    const field = page.getByRole('combobox', { name: 'Add a line' });
    await field.fill(taxon);
    await field.press('Enter');
    await page.getByRole('button', { name: 'Line done' }).waitFor();
  };

  await picture('entry-assignments');
  await page.getByRole('link', { name: 'Begin the tally' }).click();
  await begin('mallard');
  for (const key of ['Add 100', 'Add 10', 'Add 10', 'Add 1']) await press(key);
  await picture('entry-taps', '.line-editor');

  await page.getByText('Flock, time and where it went').click();
  await page.getByRole('slider', { name: 'Heading' }).press('ArrowRight');
  await page.getByText('Where the flock was').click();
  await page.locator('.section-map svg').click({ position: { x: 200, y: 120 } });
  await picture('entry-line', '.heading-dial');
  await press('Line done');

  await begin('greater/lesser scaup');
  await page.getByText('Blocks', { exact: true }).click();
  await press('50');
  for (let block = 0; block < 6; block += 1) await press('Add a block of 50');
  await picture('entry-blocks', '.line-editor');
  await press('Line done');

  await begin('canvasback');
  await page.getByText('One by one').click();
  await page.getByText('Keypad').click();
  await press('7');
  await picture('entry-keypad', '.line-editor');
  await press('Line done');

  await begin('greater scaup');
  await page.getByLabel('Birds', { exact: true }).fill('6');
  await page.getByText('Field marks seen', { exact: true }).click();
  await page
    .getByRole('group', { name: 'Bill' })
    .getByText('blue-grey with black only at the nail')
    .click();
  await picture('entry-marks', 'summary:has-text("Field marks seen")');
  await press('Leave it as Greater/Lesser Scaup');
  await press('Line done');

  await press('Start a mixed raft');
  await page.getByLabel('Birds in the whole raft').fill('640');
  for (const taxon of ['greater scaup', 'lesser scaup']) {
    const field = page.getByRole('combobox', { name: 'Scan for' });
    if ((await field.count()) === 0) await press('Scan for another taxon');
    await field.fill(taxon);
    await field.press('Enter');
  }
  for (const [english, times] of /** @type {const} */ ([
    ['Greater Scaup', 9],
    ['Lesser Scaup', 5],
  ])) {
    const bird = page.getByRole('button', { name: new RegExp(`^${english} \\d+ in sample`, 'u') });
    for (let tap = 0; tap < times; tap += 1) await bird.click();
  }
  await picture('entry-raft', '.line-editor');
  await press('Turn into tally lines');

  await press('Type in a paper sheet');
  await page.getByLabel('Row 1, code or name').waitFor();
  await picture('entry-sheet', '.entry-grid');
}
