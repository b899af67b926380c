import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { fakeServer, type FakeServer } from './fake-server.js';
import { observerAnswers, ownPart, ownTally } from './observer-count.js';
import { openApp, reloadApp, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';

const taken = (variables: Readonly<Record<string, unknown>>) => {
  const input = variables['input'] as TallyInput;
  const total = input.lines.reduce((sum, line) => sum + (line.number ?? 0), 0);
  const submittedAt = '2027-01-16T11:00:00-05:00';
  return { submitTally: { __typename: 'Tally', id: input.id, version: 1, total, submittedAt } };
};

function sentTo(server: FakeServer): TallyInput | undefined {
  const sent = server.asked.find(({ name }) => name === 'SubmitTally');
  return sent?.variables['input'] as TallyInput | undefined;
}

const button = (name: string | RegExp) => screen.getByRole('button', { name });

function scanFor(taxon: string): void {
  const field = screen.getByRole('combobox', { name: 'Scan for' });
  fireEvent.change(field, { target: { value: taxon } });
  fireEvent.keyDown(field, { key: 'Enter' });
}

function tap(english: string, times: number): void {
  // The button stays while its number changes.
  const bird = button(new RegExp(`^${english} \\d+ in sample \\d+\\. Add one$`, 'u'));
  for (let k = 0; k < times; k += 1) fireEvent.click(bird);
}

async function startRaft(): Promise<void> {
  fireEvent.click(await screen.findByRole('button', { name: 'Start a mixed raft' }));
  scanFor('greater scaup');
  fireEvent.click(button('Scan for another taxon'));
  scanFor('lesser scaup');
  // What cannot be told is scanned for as the pair, one tap away.
  fireEvent.click(button('Add Greater/Lesser Scaup'));
}

function finish(): void {
  fireEvent.change(screen.getByLabelText('Began'), { target: { value: '08:15' } });
  fireEvent.change(screen.getByLabelText('Ended'), { target: { value: '10:30' } });
  fireEvent.click(button('Look over and send'));
}

describe('a mixed raft', () => {
  useCleanBrowser();

  test('is scanned by tapping, becomes whole lines, and goes with its samples', async () => {
    const server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await startRaft();
    tap('Greater Scaup', 7);
    fireEvent.click(button('−1 Greater Scaup, take one back'));
    tap('Lesser Scaup', 3);
    fireEvent.click(button('Next sample'));
    tap('Greater Scaup', 6);
    tap('Lesser Scaup', 2);
    tap('Greater/Lesser Scaup', 3);
    expect(screen.getByText(/^Of 20 birds in 2 samples: 60 % Greater Scaup/)).toBeTruthy();
    expect(screen.getByText(/more samples like these would narrow every share/)).toBeTruthy();

    fireEvent.click(button('Turn into tally lines'));
    expect(screen.getByText(/^Give the birds of the whole raft/)).toBeTruthy();
    fireEvent.change(screen.getByLabelText('Birds in the whole raft'), {
      target: { value: '501' },
    });
    fireEvent.change(screen.getByLabelText(/^Birds in one block/u), { target: { value: '50' } });
    fireEvent.click(button('Turn into tally lines'));
    expect(await screen.findByText('2 scan samples, in the tally lines')).toBeTruthy();
    finish();
    fireEvent.click(await screen.findByRole('button', { name: 'Send the tally' }));
    await screen.findByText(/Sent: 501 birds/);

    const sent = sentTo(server);
    // 12, 5 and 3 of 20 birds: 300.6, 125.25 and 75.15 of 501; by largest remainder 301, 125 and 75.
    expect(
      sent?.lines.map((line) => [
        line.taxon,
        line.number,
        line.method,
        line.totalMethod,
        line.block,
        line.flock,
      ]),
    ).toEqual([
      ['Aythya marila', 301, 'sample', 'block', 50, 'raft 1'],
      ['Aythya affinis/marila', 75, 'sample', 'block', 50, 'raft 1'],
      ['Aythya affinis', 125, 'sample', 'block', 50, 'raft 1'],
    ]);
    expect(sent?.lines[0]?.note).toBe(
      'Raft of 501, counted in blocks of 50; 2 scan samples of 20 birds.',
    );
    expect(sent?.samples).toEqual([
      { raft: 'raft 1', sample: '1', taxon: 'Aythya marila', number: 6 },
      { raft: 'raft 1', sample: '1', taxon: 'Aythya affinis', number: 3 },
      { raft: 'raft 1', sample: '2', taxon: 'Aythya marila', number: 6 },
      { raft: 'raft 1', sample: '2', taxon: 'Aythya affinis', number: 2 },
      { raft: 'raft 1', sample: '2', taxon: 'Aythya affinis/marila', number: 3 },
    ]);
  });

  test('is kept from the first tap, asked about before sending, and its lines follow it', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await startRaft();
    tap('Greater Scaup', 4);
    reloadApp();
    const item = await screen.findByRole('button', { name: /^Raft 1.*Change this raft$/u });
    expect(item.textContent).toContain('1 scan sample, not in the tally lines yet');
    finish();
    expect((await screen.findByRole('alert')).textContent).toContain(
      'Raft 1 is not in the tally lines yet',
    );
    fireEvent.click(button(/^Raft 1.*Change this raft$/u));
    expect(button('Greater Scaup 4 in sample 1. Add one')).toBeTruthy();
    fireEvent.change(screen.getByLabelText('Birds in the whole raft'), { target: { value: '80' } });
    fireEvent.click(button('Turn into tally lines'));
    const lines = () =>
      screen.getAllByRole('button', { name: /Change this line/ }).map((line) => line.textContent);
    expect(lines()).toEqual([expect.stringMatching(/^Greater Scaup.*80/u)]);
    fireEvent.click(button(/^Raft 1.*Change this raft$/u));
    tap('Lesser Scaup', 4);
    fireEvent.click(button('Go on later'));
    expect(lines()).toEqual([
      expect.stringMatching(/^Lesser Scaup.*40/u),
      expect.stringMatching(/^Greater Scaup.*40/u),
    ]);
  });

  test('is removed with its lines, and put back with them', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await startRaft();
    tap('Greater Scaup', 4);
    fireEvent.change(screen.getByLabelText('Birds in the whole raft'), { target: { value: '80' } });
    fireEvent.click(button('Turn into tally lines'));
    fireEvent.click(button(/^Raft 1.*Change this raft$/u));
    fireEvent.click(button('Remove this raft'));
    expect(screen.queryAllByRole('button', { name: /Change this line/ })).toEqual([]);
    fireEvent.click(button('Put it back'));
    expect(screen.getAllByRole('button', { name: /Change this line/ })).toHaveLength(1);
    expect(button(/^Raft 1.*Change this raft$/u).textContent).toContain('in the tally lines');
  });

  test('is there again, with its samples, when the tally is corrected', async () => {
    const line = (id: string, taxon: string, english: string, number: number) => ({
      id,
      written: english,
      taxon,
      candidates: [taxon],
      number,
      low: null,
      high: null,
      present: false,
      method: 'sample',
      totalMethod: 'guess',
      block: null,
      male: null,
      female: null,
      adult: null,
      immature: null,
      activity: 'water',
      time: null,
      lon: null,
      lat: null,
      flock: 'raft 1',
      heading: null,
      from: null,
      to: null,
      certainty: 'sure',
      note: null,
      marks: [],
    });
    const part = ownPart();
    const [assignment] = part.assignments;
    if (assignment === undefined) throw new Error('The test count has an assignment.');
    const submitted = ownTally({
      id: 't-old',
      total: 80,
      lines: [
        line('l1', 'Aythya marila', 'Greater Scaup', 60),
        line('l2', 'Aythya affinis', 'Lesser Scaup', 20),
      ],
      samples: [
        { raft: 'raft 1', sample: '1', taxon: 'Aythya marila', number: 30 },
        { raft: 'raft 1', sample: '1', taxon: 'Aythya affinis', number: 10 },
      ],
    });
    const server = fakeServer(
      observerAnswers(
        { ...part, assignments: [{ ...assignment, submitted: true }], myTallies: [submitted] },
        { SubmitTally: taken },
      ),
    );
    openApp(form);
    fireEvent.click(await screen.findByRole('button', { name: 'Correct this tally' }));
    fireEvent.click(await screen.findByRole('button', { name: /^Raft 1.*Change this raft$/u }));
    const shares = within(screen.getByRole('region', { name: 'What the raft is made of' }));
    expect(shares.getAllByRole('listitem')[0]?.textContent).toMatch(
      /^Greater Scaup60.*, 30 scanned$/u,
    );
    // How the whole was counted is known again.
    expect(screen.getByRole<HTMLInputElement>('radio', { name: 'Guess' }).checked).toBe(true);
    fireEvent.click(button('Go on later'));
    fireEvent.change(screen.getByLabelText('Why is the tally corrected?'), {
      target: { value: 'The flock was on land.' },
    });
    fireEvent.click(button('Look over and send'));
    fireEvent.click(await screen.findByRole('button', { name: 'Send the correction' }));
    await screen.findByText(/^Sent: /);
    expect(sentTo(server)?.samples).toEqual(submitted.samples);
    expect(sentTo(server)?.lines.map(({ totalMethod }) => totalMethod)).toEqual(['guess', 'guess']);
  });
});
