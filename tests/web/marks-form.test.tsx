import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { TallyInput } from '../../web/src/graphql/generated/graphql.js';
import { emptyLine, type DraftLine } from '../../web/src/tallies/draft.js';
import { marksInForce, weighedMarks, withMark } from '../../web/src/tallies/marks-seen.js';
import { outcomeWords, seenMarkWords } from '../../web/src/tallies/marks-words.js';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';
const SCAUP_BILL = 'blue-grey with black only at the nail';
const AHEAD = 'rounded and highest ahead of the eye';

const button = (name: string | RegExp) => screen.getByRole('button', { name });
const mark = (legend: string, state: string) =>
  within(screen.getByRole('group', { name: legend })).getByRole('button', { name: state });

async function openLine(taxon: string): Promise<void> {
  const field = await screen.findByRole('combobox', { name: 'Add a line' });
  fireEvent.change(field, { target: { value: taxon } });
  fireEvent.keyDown(field, { key: 'Enter' });
  fireEvent.change(screen.getByLabelText('Birds'), { target: { value: '12' } });
}

const taken = (variables: Readonly<Record<string, unknown>>) => {
  const input = variables['input'] as TallyInput;
  const submittedAt = '2027-01-16T11:00:00-05:00';
  return { submitTally: { __typename: 'Tally', id: input.id, version: 1, total: 12, submittedAt } };
};

describe('field marks in the form', () => {
  useCleanBrowser();

  async function sent(): Promise<TallyInput['lines']> {
    fireEvent.click(button('Line done'));
    fireEvent.change(screen.getByLabelText('Began'), { target: { value: '08:15' } });
    fireEvent.change(screen.getByLabelText('Ended'), { target: { value: '10:30' } });
    fireEvent.click(button('Look over and send'));
    fireEvent.click(await screen.findByRole('button', { name: 'Send the tally' }));
    await screen.findByText(/^Sent: /);
    const call = server.asked.find(({ name }) => name === 'SubmitTally');
    return (call?.variables['input'] as TallyInput).lines;
  }
  let server: ReturnType<typeof fakeServer>;

  test('say what they leave and why, and one tap lowers the line to it', async () => {
    server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await openLine('greater scaup');
    fireEvent.click(mark('Bill', SCAUP_BILL));
    expect(screen.getByText('The marks fit Lesser Scaup as well as Greater Scaup.')).toBeTruthy();
    expect(screen.getByText(/^Fits Greater Scaup, Lesser Scaup\. Can mislead/u)).toBeTruthy();
    fireEvent.click(button('Leave it as Greater/Lesser Scaup'));
    expect(screen.getByText('The marks fit Greater/Lesser Scaup.')).toBeTruthy();
    expect(await sent()).toMatchObject([
      { taxon: 'Aythya affinis/marila', marks: [{ mark: 'bill', state: SCAUP_BILL }] },
    ]);
  });

  test('a name that says more is asked about once, and stays if the observer keeps it', async () => {
    server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await openLine('greater scaup');
    fireEvent.click(mark('Bill', SCAUP_BILL));
    fireEvent.click(button('Keep Greater Scaup'));
    // Not again, though the marks still leave more.
    fireEvent.click(mark('Profile and crown', AHEAD));
    expect(screen.getByText('The marks fit Greater Scaup.')).toBeTruthy();
    fireEvent.click(mark('Profile and crown', AHEAD));
    expect(screen.getByText('The marks fit Lesser Scaup as well as Greater Scaup.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^Leave it as.*Scaup$/u })).toBeNull();
    expect(await sent()).toMatchObject([{ taxon: 'Aythya marila' }]);
  });

  test('a question nobody answers blocks nothing', async () => {
    server = fakeServer(observerAnswers(ownPart(), { SubmitTally: taken }));
    openApp(form);
    await openLine('canvasback');
    fireEvent.click(mark('Bill', SCAUP_BILL));
    expect(
      screen.getByText('The marks fit Greater/Lesser Scaup, and not Canvasback.'),
    ).toBeTruthy();
    expect(await sent()).toMatchObject([
      { taxon: 'Aythya valisineria', marks: [{ mark: 'bill', state: SCAUP_BILL }] },
    ]);
  });

  test('a taxon without look-alikes has none', async () => {
    server = fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await openLine('american coot');
    expect(screen.queryByText('Field marks seen')).toBeNull();
  });
});

describe('the marks of a line', () => {
  const line = (taxon: string, change: Partial<DraftLine> = {}): DraftLine => ({
    ...emptyLine(taxon),
    number: '12',
    ...change,
  });

  test('that are of the other sex, or of another group, are kept but not sent', () => {
    const seen = withMark(line('Redhead'), 'female face', 'diffuse pale lores');
    expect(marksInForce(seen)).toHaveLength(1);
    expect(marksInForce({ ...seen, male: '12' })).toEqual([]);
    expect(marksInForce({ ...seen, taxon: 'Common Goldeneye' })).toEqual([]);
    expect({ ...seen, male: '12' }.marks).toHaveLength(1);
  });

  test('that never decide say so, and that contradict one another too', () => {
    const gloss = withMark(line('Greater Scaup'), 'male head gloss', 'green');
    const named = ['Aythya marila'];
    const weighed = weighedMarks(gloss);
    if (weighed === null) throw new Error('a known taxon');
    expect(weighed.outcome).toBe('not-documented');
    expect(outcomeWords(named, weighed)).toContain('mislead too often');

    const both = withMark(withMark(gloss, 'bill', 'all black'), 'profile and crown', AHEAD);
    const against = weighedMarks(both);
    if (against === null) throw new Error('a known taxon');
    expect(outcomeWords(named, against)).toContain('No bird of the group has all of these marks');
  });

  test('are given with sex and circumstance where they are not always seen', () => {
    const weighed = weighedMarks(
      withMark(line('Redhead'), 'bill', 'grey with a white band behind a broad black tip'),
    );
    expect(weighed?.dependable.map(seenMarkWords)).toEqual([
      'bill grey with a white band behind a broad black tip fits Ring-necked Duck, Redhead (female, in some)',
    ]);
  });
});
