import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, test, vi } from 'vitest';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, reloadApp, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';

async function pick(taxon: string): Promise<void> {
  const field = await screen.findByRole('combobox', { name: 'Add a line' });
  fireEvent.change(field, { target: { value: taxon } });
  fireEvent.keyDown(field, { key: 'Enter' });
}

function press(name: string | RegExp): void {
  fireEvent.click(screen.getByRole('button', { name }));
}

function number(): string {
  return screen.getByLabelText<HTMLInputElement>('Birds').value;
}

describe('counting by taps', () => {
  useCleanBrowser();

  test('goes up and down by 1, 5, 10 and 100, never under 0', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    for (const step of [100, 10, 5, 1]) press(`Add ${step}`);
    expect(number()).toBe('116');
    for (const step of [1, 5, 10]) press(`Take ${step} away`);
    expect(number()).toBe('100');
    press('Take 100 away');
    press('Take 5 away');
    expect(number()).toBe('0');
    expect(screen.getByText('A stated zero: you looked for it and saw none.')).toBeTruthy();
  });

  test('in blocks adds whole blocks of the size set, and says how it was counted', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    fireEvent.click(screen.getByLabelText('Blocks'));
    expect(screen.getByLabelText<HTMLInputElement>('In blocks').checked).toBe(true);
    press('50');
    for (let block = 0; block < 7; block += 1) press('Add a block of 50');
    press('Add 1');
    expect(number()).toBe('351');
    expect(screen.getByText('351 birds: 7 blocks of 50 and 1 more.')).toBeTruthy();
    press('Line done');
    // The list goes on in the same blocks.
    press('Add 50 to Mallard');
    expect(screen.getByRole('button', { name: /^Mallard.*in blocks of 50.*401/ })).toBeTruthy();
  });

  test('undoes a tap, a line and a choice, also after a reload, and does them again', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    press('Add 10');
    press('Add 1');
    press(/Undo/);
    expect(number()).toBe('10');
    press(/Redo/);
    expect(number()).toBe('11');
    press('Remove this line');
    expect(screen.queryByRole('button', { name: /^Mallard.*Change this line/ })).toBeNull();
    press(/Undo/);
    expect(screen.getByRole('button', { name: /^Mallard.*11/ })).toBeTruthy();
    fireEvent.click(screen.getByLabelText('Part of it'));
    window.dispatchEvent(new Event('pagehide'));

    reloadApp();
    expect((await screen.findByLabelText<HTMLInputElement>('Part of it')).checked).toBe(true);
    press(/Undo/);
    expect(screen.getByLabelText<HTMLInputElement>('Part of it').checked).toBe(false);
    press(/Undo/);
    expect(screen.getByRole('button', { name: /^Mallard.*10/ })).toBeTruthy();
    fireEvent.keyDown(window, { key: 'z', ctrlKey: true });
    fireEvent.keyDown(window, { key: 'z', ctrlKey: true });
    expect(screen.queryByRole('button', { name: /Change this line/ })).toBeNull();
    fireEvent.keyDown(window, { key: 'y', ctrlKey: true });
    expect(screen.getByRole('button', { name: /^Mallard.*–/ })).toBeTruthy();
  });

  test('stamps the time at the first tap while the window is open, and only then', async () => {
    vi.setSystemTime(new Date('2027-01-16T08:41:00-05:00'));
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    press('Add 1');
    expect(screen.getByLabelText<HTMLInputElement>('Time seen').value).toBe('08:41');
    vi.setSystemTime(new Date('2027-01-16T08:55:00-05:00'));
    press('Add 1');
    expect(screen.getByLabelText<HTMLInputElement>('Time seen').value).toBe('08:41');
    press('Line done');
    expect(screen.getByLabelText<HTMLInputElement>('Began').value).toBe('08:41');
    // In the evening a sheet is typed in: nobody counts then.
    vi.setSystemTime(new Date('2027-01-16T20:00:00-05:00'));
    await pick('redhead');
    press('Add 1');
    expect(screen.getByLabelText<HTMLInputElement>('Time seen').value).toBe('');
    vi.useRealTimers();
  });
});

describe('where and which way', () => {
  useCleanBrowser();

  test('the dial turns by keyboard and says degrees and point of the compass', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    const dial = screen.getByRole('slider', { name: 'Heading' });
    expect(dial.getAttribute('aria-valuetext')).toBe('not noted');
    fireEvent.keyDown(dial, { key: 'Home' });
    fireEvent.keyDown(dial, { key: 'PageUp' });
    expect(dial.getAttribute('aria-valuetext')).toBe('45 degrees, north-east');
    fireEvent.keyDown(dial, { key: 'ArrowLeft' });
    expect(dial.getAttribute('aria-valuetext')).toBe('40 degrees, north-east');
    fireEvent.keyDown(dial, { key: 'PageDown' });
    expect(dial.getAttribute('aria-valuenow')).toBe('355');
    expect(screen.getByText('355° N')).toBeTruthy();
    press('No heading');
    expect(dial.getAttribute('aria-valuetext')).toBe('not noted');
  });

  test('bearing and distance place the flock', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await pick('mallard');
    fireEvent.change(screen.getByLabelText('Bearing from Old pier'), { target: { value: '45' } });
    fireEvent.change(screen.getByLabelText('Distance in metres'), { target: { value: '1000' } });
    // GeographicLib 2.2.0: Geodesic.WGS84.Direct(43.999, -79.01, 45, 1000).
    expect(screen.getByLabelText<HTMLInputElement>('Latitude').value).toBe('44.00536');
    expect(screen.getByLabelText<HTMLInputElement>('Longitude').value).toBe('-79.00118');
    expect(screen.getByText('1,000 m to the NE (45°) of Old pier.')).toBeTruthy();
    fireEvent.change(screen.getByLabelText('Bearing from Old pier'), { target: { value: '400' } });
    expect(screen.getByText('Give degrees from north, 0 to 360.')).toBeTruthy();
    expect(screen.getByLabelText<HTMLInputElement>('Latitude').value).toBe('44.00536');
  });
});

describe('what to expect', () => {
  useCleanBrowser();

  test('taxa of earlier years come first, each with its pair beside it', async () => {
    const expectedTaxa = ['Bucephala albeola', 'Aythya marila'].map((taxon) => ({
      taxon,
      years: 5,
    }));
    fakeServer(observerAnswers(ownPart({ expectedTaxa })));
    openApp(form);
    const quick = await screen.findByRole('list', { name: 'Recent and expected taxa' });
    expect(
      within(quick)
        .getAllByRole('button')
        .map((button) => button.textContent),
    ).toEqual(['Bufflehead', 'Greater Scaup', 'Greater/Lesser Scaup']);
    const field = screen.getByRole('combobox', { name: 'Add a line' });
    const found = (text: string): string[] => {
      fireEvent.change(field, { target: { value: text } });
      const list = screen.getByRole('listbox', { name: 'Taxa found' });
      return within(list)
        .getAllByRole('option')
        .map((option) => option.textContent);
    };
    expect(found('gr')[0]).toContain('Greater Scaup');
    expect(found('gr')[1]).toContain('Greater/Lesser Scaup');
    // A code says what it says, however rare the bird.
    expect(found('bago')[0]).toContain("Barrow's Goldeneye");
    expect(found('bucephala')[0]).toContain('Bufflehead');
  });
});

describe('the tally as a whole', () => {
  useCleanBrowser();

  test('conditions reach the server, and none where none were noted', async () => {
    const server = fakeServer(
      observerAnswers(ownPart(), {
        SubmitTally: ({ input }) => {
          const { id } = input as TallyInput;
          const submittedAt = '2027-01-16T11:00:00-05:00';
          return { submitTally: { __typename: 'Tally', id, version: 1, total: 0, submittedAt } };
        },
      }),
    );
    openApp(form);
    const type = (label: string, value: string): void => {
      fireEvent.change(screen.getByLabelText(label), { target: { value } });
    };
    await screen.findByLabelText('Began');
    type('Began', '08:15');
    type('Ended', '10:30');
    type('Wind, Beaufort force', '4');
    type('State of the sea', '3');
    type('Ice, per cent of the section', '120');
    press('Look over and send');
    expect((await screen.findByRole('alert')).textContent).toContain('in per cent: 0 to 100');
    type('Ice, per cent of the section', '12,5');
    fireEvent.click(screen.getByLabelText('Strong'));
    type('Optics', 'telescope 30×');
    press('Look over and send');
    expect(
      await screen.findByText(
        'Wind force 4 (moderate breeze), sea slight (3), ice on 13 %, strong glare, telescope 30×.',
      ),
    ).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Send the tally' }));
    await screen.findByText(/^Sent: /);
    const sent = server.asked.find(({ name }) => name === 'SubmitTally')?.variables['input'];
    expect((sent as TallyInput).conditions).toEqual({
      visibility: null,
      beaufort: 4,
      seaState: 3,
      iceCover: 0.125,
      glare: 'strong',
      disturbance: null,
      optics: 'telescope 30×',
    });
  });
});
