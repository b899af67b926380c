import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { outboxOf } from '../../web/src/tallies/outbox.js';
import { fakeServer, RefusalAnswer, type FakeServer } from './fake-server.js';
import { observerAnswers, ownPart, ownTally } from './observer-count.js';
import { openApp, reloadApp, setOnline, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';

const taken = (variables: Readonly<Record<string, unknown>>) => {
  const input = variables['input'] as TallyInput;
  return {
    submitTally: {
      __typename: 'Tally',
      id: input.id,
      version: 1,
      total: input.lines.reduce((sum, line) => sum + (line.number ?? 0), 0),
      submittedAt: '2027-01-16T11:00:00-05:00',
    },
  };
};

function submissions(server: FakeServer): readonly TallyInput[] {
  return server.asked
    .filter(({ name }) => name === 'SubmitTally')
    .map(({ variables }) => variables['input'] as TallyInput);
}

async function addLine(taxon: string, number: string): Promise<void> {
  const field = await screen.findByRole('combobox', { name: 'Add a line' });
  fireEvent.change(field, { target: { value: taxon } });
  fireEvent.keyDown(field, { key: 'Enter' });
  fireEvent.change(screen.getByLabelText('Birds'), { target: { value: number } });
  fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
}

function fillTimes(): void {
  fireEvent.change(screen.getByLabelText('Began'), { target: { value: '08:15' } });
  fireEvent.change(screen.getByLabelText('Ended'), { target: { value: '10:30' } });
}

async function sendIt(): Promise<void> {
  fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
  fireEvent.click(await screen.findByRole('button', { name: 'Send the tally' }));
}

describe('tally form', () => {
  useCleanBrowser();

  test('a pair and a group are entered, looked over and sent as written', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await addLine('greater/lesser scaup', '1,200');
    await addLine('aythya sp.', '40');
    fillTimes();
    await sendIt();
    await screen.findByText(/Sent: 1,240 birds/);
    const [sent] = submissions(server);
    expect(sent?.lines.map(({ taxon, number }) => [taxon, number])).toEqual([
      ['Aythya affinis/marila', 1200],
      ['Aythya sp.', 40],
    ]);
    // Toronto's clocks are five hours behind UTC in January (IANA time zone database).
    expect(sent?.start).toBe('2027-01-16T08:15:00-05:00');
    expect(sent?.sectionIds).toEqual(['s1']);
    expect(sent?.vantageId).toBe('v1');
    // RFC 9562: the 13th hex digit of a UUIDv7 is 7.
    expect(sent?.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-/);
  });

  test('one tap leaves a species as its pair, and block keys add up', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    fireEvent.click(await screen.findByRole('button', { name: 'Greater Scaup' }));
    fireEvent.click(screen.getByRole('button', { name: 'Greater/Lesser Scaup' }));
    expect(screen.getByRole('heading', { name: 'Greater/Lesser Scaup' })).toBeTruthy();
    for (const key of ['Add 100', 'Add 10', 'Add 10', 'Add 5', 'Add 1', 'Take 1 away']) {
      fireEvent.click(screen.getByRole('button', { name: key }));
    }
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
    fillTimes();
    await sendIt();
    await screen.findByText(/Sent: 125 birds/);
    expect(submissions(server)[0]?.lines[0]).toMatchObject({
      taxon: 'Aythya affinis/marila',
      number: 125,
    });
  });

  test('the draft survives a reload, also in the middle of a line', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await addLine('mallard', '12');
    const field = screen.getByRole('combobox', { name: 'Add a line' });
    fireEvent.change(field, { target: { value: 'canvasback' } });
    fireEvent.keyDown(field, { key: 'Enter' });
    fireEvent.change(screen.getByLabelText('Birds'), { target: { value: '7' } });
    reloadApp();
    const lines = await screen.findAllByRole('button', { name: /Change this line/ });
    expect(lines.map((line) => line.textContent)).toEqual([
      expect.stringMatching(/^Canvasback7/),
      expect.stringMatching(/^Mallard12/),
    ]);
  });

  test('without a network the tally is kept, and sent once with the same id when it is back', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await addLine('mallard', '12');
    fillTimes();
    server.unreachable = true;
    setOnline(false);
    await sendIt();
    await screen.findByText('Kept on this phone, not yet sent.');
    expect(submissions(server)).toHaveLength(0);
    const [kept] = await outboxOf('o1');

    // The phone is put away and taken out again, still out of range: the page opens from what it kept.
    reloadApp();
    await screen.findByText('Kept on this phone, not yet sent.');

    server.unreachable = false;
    setOnline(true);
    await waitFor(() => expect(submissions(server)).toHaveLength(1), { timeout: 4000 });
    await screen.findByText(/Sent: 12 birds/);
    expect(submissions(server)[0]?.id).toBe(kept?.id);
    expect((await outboxOf('o1')).map(({ state }) => state.kind)).toEqual(['received']);
  }, 10_000);

  test('a lost answer is sent again with the same bytes', async () => {
    let isFirst = true;
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    const reached = globalThis.fetch;
    globalThis.fetch = async (target, request) => {
      const answer = await reached(target, request);
      if (typeof request?.body === 'string' && request.body.includes('SubmitTally') && isFirst) {
        isFirst = false;
        throw new TypeError('the connection was lost on the way back');
      }
      return answer;
    };
    openApp(form);
    await addLine('mallard', '12');
    fillTimes();
    await sendIt();
    await waitFor(() => expect(submissions(server)).toHaveLength(2), { timeout: 4000 });
    const [first, second] = submissions(server);
    expect(JSON.stringify(second)).toBe(JSON.stringify(first));
  }, 10_000);

  test('faults from the server stand at the line they are about, and in the summary', async () => {
    const fault = {
      code: 'sub-counts',
      file: 'tally',
      row: 2,
      column: 'male',
      value: '9',
      problem: "male and female add up to 9, more than the line's 5",
      expected: 'at most 5',
      nearest: null,
    };
    fakeServer(
      observerAnswers(ownPart(), {
        SubmitTally: () => {
          throw new RefusalAnswer('BAD_INPUT', 'Nothing was taken in: 1 thing needs mending.', [
            fault,
          ]);
        },
      }),
    );
    openApp(form);
    await addLine('mallard', '12');
    await addLine('canvasback', '5');
    fillTimes();
    await sendIt();
    const summary = await screen.findByRole('alert');
    expect(summary.textContent).toContain('Nothing was taken in: 1 thing needs mending.');
    expect(summary.textContent).toContain('Line 2, Canvasback: Male and female add up to 9');
    const line = screen.getByRole('button', { name: /Canvasback.*Change this line/ });
    const item = line.closest('li');
    expect(item?.textContent).toContain('Expected at most 5');
    // Opened, the fault is tied to its field.
    fireEvent.click(line);
    const males = screen.getByLabelText('Males');
    expect(males.getAttribute('aria-invalid')).toBe('true');
    const described = (males.getAttribute('aria-describedby') ?? '').split(' ');
    const text = described.map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
    expect(text).toContain('Expected at most 5');
  });

  test('what is missing is named at its field before anything is sent', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await addLine('mallard', 'many');
    fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
    const summary = await screen.findByRole('alert');
    expect(within(summary).getAllByRole('listitem')).toHaveLength(3);
    expect(screen.getByLabelText('Began').getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByLabelText('Ended').getAttribute('aria-invalid')).toBe('true');
    expect(submissions(server)).toHaveLength(0);
  });

  test('a stated zero, a range, presence only, a partial view and the party reach the server', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await addLine('mute swan', '0');
    const field = await screen.findByRole('combobox', { name: 'Add a line' });
    fireEvent.change(field, { target: { value: 'BUFF' } });
    fireEvent.keyDown(field, { key: 'Enter' });
    fireEvent.click(screen.getByLabelText('From–to'));
    fireEvent.change(screen.getByLabelText('At least'), { target: { value: '40' } });
    fireEvent.change(screen.getByLabelText('At most'), { target: { value: '60' } });
    fireEvent.click(screen.getByLabelText('Flying through'));
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
    const again = screen.getByRole('combobox', { name: 'Add a line' });
    fireEvent.change(again, { target: { value: 'COLO' } });
    fireEvent.keyDown(again, { key: 'Enter' });
    fireEvent.click(screen.getByLabelText('Seen, not counted'));
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
    fillTimes();
    fireEvent.click(screen.getByLabelText('Part of it'));
    fireEvent.change(screen.getByLabelText('About how much, in per cent'), {
      target: { value: '50' },
    });
    fireEvent.click(screen.getByLabelText('Tom Reed'));
    await sendIt();
    await screen.findByText(/^Sent: /);
    const sent = submissions(server)[0];
    expect(sent).toMatchObject({ coverage: 0.5, partyIds: ['o2'], scope: 'all-waterbirds' });
    expect(
      sent?.lines.map(({ taxon, number, low, high, activity }) => ({
        taxon,
        number,
        low,
        high,
        activity,
      })),
    ).toEqual([
      { taxon: 'Cygnus olor', number: 0, low: null, high: null, activity: 'water' },
      { taxon: 'Bucephala albeola', number: null, low: 40, high: 60, activity: 'flying-through' },
      { taxon: 'Gavia immer', number: null, low: null, high: null, activity: 'water' },
    ]);
  });

  test('a correction names the tally it replaces and must say why', async () => {
    const submitted = ownTally({
      id: 't-old',
      total: 12,
      lines: [
        {
          id: 'l1',
          written: 'Mallard',
          taxon: 'Anas platyrhynchos',
          candidates: ['Anas platyrhynchos'],
          number: 12,
          low: null,
          high: null,
          present: false,
          method: 'one-by-one',
          block: null,
          male: 7,
          female: 5,
          adult: null,
          immature: null,
          activity: 'water',
          time: null,
          lon: -79.1,
          lat: 44.2,
          flock: null,
          heading: null,
          from: null,
          to: null,
          certainty: 'sure',
          note: null,
          totalMethod: null,
          marks: [],
        },
      ],
    });
    const part = ownPart();
    const [assignment] = part.assignments;
    if (assignment === undefined) throw new Error('The test count has an assignment.');
    const server = fakeServer(
      observerAnswers(
        {
          ...part,
          assignments: [{ ...assignment, submitted: true }],
          myTallies: [
            {
              ...submitted,
              party: [...submitted.party],
              sections: [...submitted.sections],
              lines: submitted.lines.map((line) => ({
                ...line,
                candidates: [...line.candidates],
                totalMethod: null,
                marks: [],
              })),
              samples: [],
            },
          ],
        },
        { SubmitTally: taken },
      ),
    );
    openApp(form);
    fireEvent.click(await screen.findByRole('button', { name: 'Correct this tally' }));
    fireEvent.click(await screen.findByRole('button', { name: 'Look over and send' }));
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Say why the tally is corrected',
    );
    fireEvent.change(screen.getByLabelText('Why is the tally corrected?'), {
      target: { value: 'Two were decoys.' },
    });
    fireEvent.click(screen.getByRole('button', { name: /^Mallard.*Change this line/ }));
    fireEvent.change(screen.getByLabelText('Birds'), { target: { value: '10' } });
    fireEvent.change(screen.getByLabelText('Males'), { target: { value: '5' } });
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));
    fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
    fireEvent.click(await screen.findByRole('button', { name: 'Send the correction' }));
    await screen.findByText(/^Sent: /);
    const sent = submissions(server)[0];
    expect(sent).toMatchObject({
      replaces: 't-old',
      reason: 'Two were decoys.',
      start: '2027-01-16T08:15:00-05:00',
    });
    expect(sent?.id).not.toBe('t-old');
    expect(sent?.lines[0]).toMatchObject({ number: 10, male: 5, female: 5, lon: -79.1, lat: 44.2 });
  });
});
