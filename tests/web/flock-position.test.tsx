import { fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { readDraft } from '../../web/src/tallies/draft-store.js';
import { keptDatabase } from '../../web/src/tallies/kept-database.js';
import { openDraft } from '../../web/src/tallies/open-draft.js';
import { fakeServer, type FakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, useCleanBrowser } from './open-app.js';

const taken = ({ input }: Readonly<Record<string, unknown>>) => ({
  submitTally: {
    __typename: 'Tally',
    id: (input as TallyInput).id,
    version: 1,
    total: 12,
    submittedAt: '2027-01-16T11:00:00-05:00',
  },
});

/** A phone that answers when the test says so. */
function phonePosition(): {
  readonly found: (lat: number, lon: number) => void;
  readonly refused: () => void;
} {
  let asked: Parameters<Geolocation['getCurrentPosition']> | null = null;
  Object.defineProperty(navigator, 'geolocation', {
    configurable: true,
    value: {
      getCurrentPosition: (...answers: Parameters<Geolocation['getCurrentPosition']>) => {
        asked = answers;
      },
    },
  });
  return {
    found: (latitude, longitude) =>
      asked?.[0]({ coords: { latitude, longitude, accuracy: 12.4 } } as GeolocationPosition),
    refused: () => asked?.[1]?.({ code: 1, PERMISSION_DENIED: 1 } as GeolocationPositionError),
  };
}

async function openLine(): Promise<FakeServer> {
  const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
  openApp('/counts/c1/assignments/a1');
  const field = await screen.findByRole('combobox', { name: 'Add a line' });
  fireEvent.change(field, { target: { value: 'redhead' } });
  fireEvent.keyDown(field, { key: 'Enter' });
  fireEvent.change(screen.getByLabelText('Birds'), { target: { value: '12' } });
  return server;
}

async function send(server: FakeServer): Promise<TallyInput | undefined> {
  fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
  fireEvent.change(screen.getByLabelText('Began'), { target: { value: '08:15' } });
  fireEvent.change(screen.getByLabelText('Ended'), { target: { value: '10:30' } });
  fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Send the tally' }));
  await screen.findByText(/Sent: 12 birds/u);
  return server.asked.find(({ name }) => name === 'SubmitTally')?.variables['input'] as TallyInput;
}

const type = (label: string, value: string): void => {
  fireEvent.change(screen.getByLabelText(label), { target: { value } });
};
const valueOf = (label: string): string => screen.getByLabelText<HTMLInputElement>(label).value;

describe('where a flock was', () => {
  useCleanBrowser();
  afterEach(() => Reflect.deleteProperty(navigator, 'geolocation'));

  test('is folded away, may be left empty, and is sent as degrees when typed', async () => {
    const server = await openLine();
    expect(screen.getByText('Where the flock was').closest('details')?.open).toBe(false);
    type('Latitude', ' 44.2137');
    type('Longitude', '-79.4521');
    expect((await send(server))?.lines[0]).toMatchObject({ lat: 44.2137, lon: -79.4521 });
  });

  test('left empty, nothing is sent of it', async () => {
    const server = await openLine();
    expect((await send(server))?.lines[0]).toMatchObject({ lat: null, lon: null });
  });

  test('is set by keyboard alone, and the cross-hair is told in words', async () => {
    const server = await openLine();
    const map = screen.getByRole('application', { name: /^Map of your section, north up\./u });
    fireEvent.keyDown(map, { key: 'ArrowRight', shiftKey: true });
    const words = await screen.findByText(/^Cross-hair: /u);
    const before = words.textContent;
    fireEvent.keyDown(map, { key: 'ArrowUp' });
    expect(words.textContent).not.toBe(before);
    expect(words.textContent).toMatch(/(?:in|outside) .*Enter sets it\.$/u);
    fireEvent.keyDown(map, { key: 'Enter' });
    const [line] = (await send(server))?.lines ?? [];
    expect(line?.lat).toBeTypeOf('number');
    expect(line?.lon).toBeTypeOf('number');
  });

  test('half a position, and what is not on the globe, is named at its field', async () => {
    await openLine();
    type('Latitude', '144');
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
    fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toContain('from -90 to 90');
    expect(alert.textContent).toContain('together, or neither');
  });

  test('the phone’s position is put in, and what was typed meanwhile stays', async () => {
    const phone = phonePosition();
    const server = await openLine();
    fireEvent.click(screen.getByRole('button', { name: 'Use my phone’s position' }));
    type('Birds', '12');
    type('Flock label', 'raft 1');
    phone.found(44.2137049, -79.4520951);
    await screen.findAllByText(/good to about 12 m\. It is where you stand/u);
    expect([valueOf('Latitude'), valueOf('Longitude')]).toEqual(['44.21370', '-79.45210']);
    expect((await send(server))?.lines[0]).toMatchObject({
      lat: 44.2137,
      lon: -79.4521,
      flock: 'raft 1',
    });
  });

  test('a line that was taken out meanwhile does not come back with the phone’s answer', async () => {
    const phone = phonePosition();
    await openLine();
    fireEvent.click(screen.getByRole('button', { name: 'Use my phone’s position' }));
    fireEvent.click(screen.getByRole('button', { name: 'Remove this line' }));
    phone.found(44.2, -79.4);
    await screen.findByRole('combobox', { name: 'Add a line' });
    await openDraft('o1', 'a1').written();
    const kept = await readDraft(await keptDatabase(), 'o1', 'a1');
    expect(kept?.draft.lines).toEqual([]);
  });

  test('a phone that may not tell says what else can be done', async () => {
    const phone = phonePosition();
    await openLine();
    fireEvent.click(screen.getByRole('button', { name: 'Use my phone’s position' }));
    phone.refused();
    await screen.findAllByText(/may not tell its position\. Allow it/u);
  });
});
