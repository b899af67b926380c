import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build } from '../../server/build.mjs';
import { accessibilityViolations, signIn } from './browser.mjs';
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

/** What the server has of whoever is signed in on the page. */
async function ownTallies(page: Page): Promise<readonly { id: string; total: number }[]> {
  return page.evaluate(async () => {
    const query =
      '{ counts { id } count(id: "lake-emberlow") { myTallies { id total version replaces } } }';
    const response = await fetch('/graphql', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ query }),
    });
    const { data } = (await response.json()) as {
      data: { count: { myTallies: { id: string; total: number }[] } };
    };
    return data.count.myTallies;
  });
}

/** Each test goes on from the one before, as a day at the shore does. */
describe.skipIf(chromium === '')('a day without a network', () => {
  let server: StoppableServer;
  let phone: Phone;
  let assignments: string;
  let form = '';

  beforeAll(async () => {
    await build(() => undefined, { only: 'web app' });
    server = await StoppableServer.start({ demo: true });
    phone = await Phone.unpack();
    assignments = `${server.url}/counts/lake-emberlow/assignments`;
  }, longTest);

  afterAll(async () => {
    await phone.throwAway();
    await server.remove();
  });

  test(
    'one visit by the invite link is enough: any page of the observer opens without network',
    async () => {
      const person = server.running.signIns.find(({ note }) => note !== null);
      if (person === undefined) throw new Error('Nobody has a tally left to submit.');
      const visit = await phone.context.newPage();
      await signIn(visit, server.url, person);
      await untilReadyForTheShore(visit);
      await visit.close();

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
      await second.getByRole('button', { name: /^Mallard.*Change this line/u }).waitFor(patient);
      await addLine(second, 'canvasback', '7');
      await page.getByRole('button', { name: /^Canvasback.*Change this line/u }).waitFor(patient);
    },
    longTest,
  );

  test(
    'what was tapped outlives the browser, and so does a tally that waits',
    async () => {
      await phone.restart();
      await phone.context.setOffline(true);
      const page = await phone.open(form);
      await page.getByRole('button', { name: /^Mallard.*Change this line/u }).waitFor(patient);
      await page.getByRole('button', { name: /^Canvasback.*Change this line/u }).waitFor(patient);
      await page.getByLabel('Began', { exact: true }).fill('08:20');
      await page.getByLabel('Ended', { exact: true }).fill('10:35');
      await page.getByRole('button', { name: 'Look over and send' }).click();
      await page.getByRole('button', { name: 'Send the tally' }).click();
      await page.getByText('Kept on this phone, not yet sent.').waitFor(patient);

      await phone.restart();
      await phone.context.setOffline(true);
      const again = await phone.open(assignments);
      const kept = again.getByRole('region', { name: 'On this phone' });
      await kept.getByText('On this phone; it goes by itself').waitFor(patient);
      await kept.getByText('2 lines, 19 birds').waitFor();
      expect(await accessibilityViolations(again)).toEqual([]);
    },
    longTest,
  );

  test(
    'back in range it is sent by itself, once, and that is remembered',
    async () => {
      const page = await phone.open(form);
      await page.getByText('Kept on this phone, not yet sent.').waitFor(patient);
      await server.startAgain();
      await phone.context.setOffline(false);
      await page.getByText('Sent: 19 birds. Thank you.').waitFor(patient);
      expect((await ownTallies(page)).filter(({ total }) => total === 19)).toHaveLength(1);

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
});
