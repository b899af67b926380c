import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from '../../server/build.mjs';
import {
  accessibilityViolations,
  sidewaysOverflow,
  signIn,
  targetsUnder44,
  violationsInEveryTheme,
} from './browser.mjs';
import { chromium } from './demonstration.js';
import { Phone, StoppableServer, untilReadyForTheShore } from './phone.js';

/** A busy machine starts browsers and servers slowly. */
const longTest = 240_000;
const patient = { timeout: 60_000 };

async function addLine(page: Page, taxon: string, number: string): Promise<void> {
  const field = page.getByRole('combobox', { name: 'Add a line' });
  await field.fill(taxon);
  await field.press('Enter');
  await page.getByLabel('Birds', { exact: true }).fill(number);
  await page.getByRole('button', { name: 'Line done' }).click();
}

async function sayWhen(page: Page): Promise<void> {
  await page.getByLabel('Began', { exact: true }).fill('08:20');
  await page.getByLabel('Ended', { exact: true }).fill('10:35');
}

/** A line of the form with its number. */
const line = (page: Page, taxon: string, number: string) =>
  page.getByRole('button', { name: new RegExp(`^${taxon}.*\\b${number}\\b`, 'u') });

/** What the server has of the observer who is signed in on the page, for the West Basin. */
async function ownTallies(page: Page): Promise<readonly OwnTally[]> {
  return page.evaluate(async () => {
    const query =
      '{ count(id: "lake-emberlow") { myTallies { total version sections { id } lines { taxon number } } } }';
    const response = await fetch('/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ query }),
    });
    const { data } = (await response.json()) as { data: { count: { myTallies: OwnTally[] } } };
    return data.count.myTallies.filter(({ sections }) => sections.some(({ id }) => id === 's3'));
  });
}

interface OwnTally {
  readonly total: number;
  readonly version: number;
  readonly sections: readonly { readonly id: string }[];
  readonly lines: readonly { readonly taxon: string; readonly number: number }[];
}

/** The side-by-side table, row by row. */
async function sheets(page: Page): Promise<readonly string[]> {
  const rows = await page.locator('table.sheets tr').allInnerTexts();
  return rows.map((row) => row.replaceAll(/\s+/gu, ' ').trim());
}

/** In each theme axe-core finds nothing, and every control can be hit with a glove. */
async function expectFine(page: Page): Promise<void> {
  expect(await sidewaysOverflow(page)).toBe(0);
  expect(await targetsUnder44(page)).toEqual([]);
  expect(await violationsInEveryTheme(page)).toEqual([]);
}

/**
 * Keeps every tab's changes waiting for the phone's storage, as a slow phone does: what two tabs write
 * meanwhile meets there.
 *
 * @returns lets them through
 */
async function holdStorage(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('countersign');
        opening.onerror = () => reject(new Error('The storage cannot be opened.'));
        opening.onsuccess = () => {
          const drafts = opening.result.transaction('drafts', 'readwrite').objectStore('drafts');
          const hold = (): void => {
            if (document.documentElement.dataset['hold'] === 'over') opening.result.close();
            else drafts.count().onsuccess = hold;
          };
          drafts.count().onsuccess = () => {
            resolve();
            hold();
          };
        };
      }),
  );
  return () =>
    page.evaluate(() => {
      document.documentElement.dataset['hold'] = 'over';
    });
}

/** Each test goes on from the one before, as a day at the shore does. */
describe.skipIf(chromium === '')('a day without a network', () => {
  let server: StoppableServer;
  let phone: Phone;
  /** The same observer's other phone. */
  let other: Phone;
  let name = '';
  let assignments: string;
  let form = '';

  beforeAll(async () => {
    await build(() => undefined, { only: 'web app' });
    server = await StoppableServer.start({ demo: true });
    name = server.running.signIns.find(({ note }) => note !== null)?.name ?? '';
    [phone, other] = await Promise.all([Phone.unpack(), Phone.unpack()]);
    assignments = `${server.url}/counts/lake-emberlow/assignments`;
  }, longTest);

  /** The observer by their invite link; a server that is started again makes a new one. */
  async function signInToday(page: Page): Promise<void> {
    const person = server.running.signIns.find((one) => one.name === name);
    if (person === undefined) throw new Error('Nobody had a tally left to submit.');
    await signIn(page, server.url, person);
  }

  afterAll(async () => {
    await phone.throwAway();
    await other.throwAway();
    await server.remove();
  });

  test(
    'one visit by the invite link is enough: any page of the observer opens without network',
    async () => {
      for (const { context } of [phone, other]) {
        const visit = await context.newPage();
        await signInToday(visit);
        await untilReadyForTheShore(visit);
        await visit.close();
      }

      await server.stop();
      await phone.context.setOffline(true);

      // From the start page to the form.
      const page = await phone.open(`${server.url}/`);
      await page.getByRole('heading', { name: 'My assignments' }).waitFor(patient);
      await page.getByText('Before you go out').waitFor();
      await page.getByText('No connection. What you enter is kept on this device.').waitFor();
      await page.getByRole('link', { name: 'Begin the tally' }).click();
      await page.getByRole('combobox', { name: 'Add a line' }).waitFor(patient);
      form = page.url();
      expect(await accessibilityViolations(page)).toEqual([]);

      await addLine(page, 'mallard', '12');

      // A second tab of the same form: what one writes shows in the other.
      const second = await phone.open(form);
      await line(second, 'Mallard', '12').waitFor(patient);
      await addLine(second, 'canvasback', '7');
      await line(page, 'Canvasback', '7').waitFor(patient);
    },
    longTest,
  );

  test(
    'what two tabs change at the same time stands side by side, until one is chosen in either',
    async () => {
      const [, first, second] = phone.context.pages();
      if (first === undefined || second === undefined) throw new Error('Two tabs are open.');
      const third = await phone.open(assignments);
      await third.getByRole('heading', { name: 'My assignments' }).waitFor(patient);
      const letThrough = await holdStorage(third);
      await first.getByRole('button', { name: 'Add 1 to Mallard' }).click();
      await second.getByRole('button', { name: 'Add 1 to Canvasback' }).click();
      // Each shows its own tap at once, and nothing of the other's.
      await line(first, 'Mallard', '13').waitFor();
      await line(first, 'Canvasback', '7').waitFor();
      await line(second, 'Mallard', '12').waitFor();
      await line(second, 'Canvasback', '8').waitFor();
      await letThrough();
      for (const page of [first, second]) {
        await page
          .getByText('This tally was changed in two places at the same time.')
          .waitFor(patient);
        const [, ...rows] = await sheets(page);
        expect(rows).toEqual([
          'Canvasback differs 7 8',
          'Mallard differs 13 12',
          'All birds 20 20',
        ]);
      }
      await expectFine(first);
      await second.getByRole('button', { name: 'Go on with version 2' }).click();
      for (const page of [first, second]) {
        await line(page, 'Mallard', '12').waitFor(patient);
        await line(page, 'Canvasback', '8').waitFor(patient);
      }
      // What the chosen version lacks is added, and shows in both.
      await first.getByRole('button', { name: 'Add 1 to Mallard' }).click();
      await line(second, 'Mallard', '13').waitFor(patient);
    },
    longTest,
  );

  test(
    'what was tapped outlives a browser killed in the middle, and so does a tally that waits',
    async () => {
      const [, first] = phone.context.pages();
      if (first === undefined) throw new Error('A tab is open.');
      // Killed in the middle of a line.
      await line(first, 'Canvasback', '8').click();
      await first.getByRole('button', { name: 'Take 1 away' }).click();
      const [, , second] = phone.context.pages();
      if (second === undefined) throw new Error('Two tabs are open.');
      // The other tab knows it from the phone's storage: it is kept.
      await line(second, 'Canvasback', '7').waitFor(patient);
      await phone.killAndRestart();
      await phone.context.setOffline(true);
      const page = await phone.open(form);
      await line(page, 'Mallard', '13').waitFor(patient);
      await line(page, 'Canvasback', '7').waitFor(patient);
      await line(page, 'Mallard', '13').click();
      await page.getByRole('button', { name: 'Take 1 away' }).click();
      await page.getByRole('button', { name: 'Line done' }).click();
      await sayWhen(page);
      await page.getByRole('button', { name: 'Look over and send' }).click();
      await page.getByRole('button', { name: 'Send the tally' }).click();
      await page.getByText('Kept on this phone, not yet sent.').waitFor(patient);

      await phone.killAndRestart();
      await phone.context.setOffline(true);
      const again = await phone.open(assignments);
      const kept = again.getByRole('region', { name: 'On this phone' });
      await kept.getByText('On this phone; it goes by itself').waitFor(patient);
      await kept.getByText('2 lines, 19 birds').waitFor();
      expect(await accessibilityViolations(again)).toEqual([]);

      // Meanwhile the other phone has a tally of its own for the same assignment.
      await other.context.setOffline(true);
      const elsewhere = await other.open(form);
      await elsewhere.getByRole('combobox', { name: 'Add a line' }).waitFor(patient);
      await addLine(elsewhere, 'mallard', '12');
      await addLine(elsewhere, 'redhead', '5');
      await sayWhen(elsewhere);
      await elsewhere.getByLabel('Ended', { exact: true }).fill('10:40');
      await elsewhere.getByRole('button', { name: 'Look over and send' }).click();
      await elsewhere.getByRole('button', { name: 'Send the tally' }).click();
      await elsewhere.getByText('Kept on this phone, not yet sent.').waitFor(patient);
    },
    longTest,
  );

  test(
    'back in range it is sent by itself, once, though the browser is killed before it hears so',
    async () => {
      await server.startAgain();
      // The server takes the tally, and its answer never arrives.
      let hasTaken = (): void => undefined;
      const taken = new Promise<void>((resolve) => {
        hasTaken = resolve;
      });
      await phone.context.route('**/graphql', async (route) => {
        if (!(route.request().postData() ?? '').includes('submitTally')) return route.continue();
        await route.fetch();
        hasTaken();
      });
      await phone.open(form);
      await phone.context.setOffline(false);
      await taken;
      await phone.killAndRestart();
      // A browser that is killed early forgets who was signed in, but not the tally.
      const page = await phone.open(`${server.url}/sign-in`);
      await page.getByText('1 tally on this phone was not sent yet.').waitFor(patient);
      await signInToday(page);
      const kept = page.getByRole('region', { name: 'On this phone' });
      await kept.getByText(/^Received at/u).waitFor(patient);
      expect((await ownTallies(page)).map(({ total, version }) => [total, version])).toEqual([
        [19, 1],
      ]);

      await phone.restart();
      await phone.context.setOffline(true);
      const later = await phone.open(assignments);
      await later
        .getByRole('region', { name: 'On this phone' })
        .getByText(/^Received at/u)
        .waitFor(patient);
      await phone.context.setOffline(false);
    },
    longTest,
  );

  test(
    'the other phone’s tally is shown beside the received one, and can become its correction',
    async () => {
      const page = await other.open(form);
      await other.context.setOffline(false);
      await page.getByText('There are two tallies of this assignment.').waitFor(patient);
      const [, ...rows] = await sheets(page);
      expect(rows).toEqual([
        'Ended differs 10:35 10:40',
        'Canvasback differs 7 not in it',
        'Redhead differs not in it 5',
        'Mallard 12 12',
        'All birds 19 17',
      ]);
      expect(await ownTallies(page)).toHaveLength(1);
      await expectFine(page);
      await page.getByRole('button', { name: 'Send this phone’s as a correction' }).click();
      await addLine(page, 'canvasback', '7');
      await page.getByLabel('Why is the tally corrected?').fill('The redheads were on my phone.');
      await page.getByRole('button', { name: 'Look over and send' }).click();
      await page.getByRole('button', { name: 'Send the correction' }).click();
      await page.getByText('Sent: 24 birds. Thank you.').waitFor(patient);
      const [tally, ...more] = await ownTallies(page);
      expect(more).toEqual([]);
      expect(tally).toMatchObject({ total: 24, version: 2 });
    },
    longTest,
  );

  test(
    'two corrections of one tally: the received one can be kept, and nothing is counted twice',
    async () => {
      // Both phones begin to correct version 2; the other phone is the first to send.
      const page = await phone.open(form);
      await page.getByText('24 birds').waitFor(patient);
      await page.getByRole('button', { name: 'Correct this tally' }).click();
      await page.getByRole('button', { name: 'Add 1 to Redhead' }).click();
      const reason = 'One redhead was behind the pier.';
      await page.getByLabel('Why is the tally corrected?').fill(reason);
      const elsewhere = await other.open(form);
      await elsewhere.getByRole('button', { name: 'Correct this tally' }).click(patient);
      await elsewhere.getByRole('button', { name: 'Add 1 to Mallard' }).click();
      await elsewhere.getByLabel('Why is the tally corrected?').fill('One mallard more.');
      await elsewhere.getByRole('button', { name: 'Look over and send' }).click();
      await elsewhere.getByRole('button', { name: 'Send the correction' }).click();
      await elsewhere.getByText('Sent: 25 birds. Thank you.').waitFor(patient);

      await page.getByRole('button', { name: 'Look over and send' }).click();
      await page.getByRole('button', { name: 'Send the correction' }).click();
      await page.getByText('There are two tallies of this assignment.').waitFor(patient);
      const [, ...rows] = await sheets(page);
      expect(rows).toEqual([
        'Mallard differs 13 12',
        'Redhead differs 5 6',
        'Canvasback 7 7',
        'All birds 25 25',
      ]);
      await page.getByRole('button', { name: 'The received one is right' }).click();
      await expectFine(page);
      await page.getByRole('button', { name: 'Drop it' }).click();
      await page.getByText('This is version 3', { exact: false }).waitFor(patient);
      const [tally, ...more] = await ownTallies(page);
      expect(more).toEqual([]);
      expect(tally).toMatchObject({ total: 25, version: 3 });
      const numbers = tally?.lines.map(({ taxon, number }) => `${taxon} ${number}`).sort();
      expect(numbers).toEqual([
        'Anas platyrhynchos 13',
        'Aythya americana 5',
        'Aythya valisineria 7',
      ]);
      // The draft is gone: nothing of it is sent later.
      await page.goto(assignments);
      await page.getByRole('heading', { name: 'My assignments' }).waitFor(patient);
      await expect(page.locator('main').innerText()).resolves.not.toContain('it goes by itself');
    },
    longTest,
  );
});
