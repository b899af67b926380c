import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { AskQueryInput, RulingInput } from '../../web/src/graphql/generated/graphql.js';
import { compiler } from './compiler-count.js';
import { fakeServer, RefusalAnswer, type FakeServer } from './fake-server.js';
import { ingrid, linksAnswers, party, raft, tom } from './links-count.js';
import { openApp, useCleanBrowser } from './open-app.js';

const page = '/counts/c1/links';

const given = {
  GiveRuling: ({ input }: Readonly<Record<string, unknown>>) => ({
    giveRuling: {
      __typename: 'Ruling',
      id: (input as RulingInput).id,
      state: 'APPLIED',
      text: '',
      inputHash: 'hash-2',
    },
  }),
};

function ruling(state: string, kind = 'confirm-link') {
  return {
    __typename: 'Ruling',
    id: 'r1',
    by: compiler,
    at: '2027-01-16T20:00:00Z',
    reason: 'Seen to swim.',
    state,
    text: 'Lena Fisk: one flock.',
    replaces: null,
    secondedBy: null,
    target: { kind: 'link', cell: null, group: null, link: raft.id, tally: null, line: null },
    decision: { kind },
  };
}

describe('the page of double counts', () => {
  useCleanBrowser();

  test('shows the two sightings side by side, with the score in words', async () => {
    fakeServer(linksAnswers([party, raft]));
    openApp(page);
    const table = await screen.findByRole('table', { name: /A flock that left one section/u });
    const texts = within(table)
      .getAllByRole('row')
      .map((row) => [...row.querySelectorAll('th, td')].map((cell) => cell.textContent.trim()));
    expect(texts).toEqual([
      ['', '1 First sighting', '2 Second sighting'],
      ['Section', 'North Bay', 'South Bay'],
      ['Birds', '400', '380'],
      ['Taxon', 'Lesser Scaup Aythya affinis', 'Greater/Lesser Scaup Aythya affinis/marila'],
      ['Seen', '08:30', '08:52'],
      ['By', 'Ingrid Vale', 'Tom Reed'],
      ['Place', 'noted', 'noted'],
    ]);
    screen.getByText(/^For one flock: 1\.1 km in 22 minutes .*; 400 and 380 birds: alike/u);
    screen.getByRole('img', {
      name: 'Map. An arrow leads from North Bay to South Bay, 96 % likely one flock.',
    });
    screen.getByText('2 possible double counts are open; 1 of them reaches the protocol’s 90 %.');
  });

  test('another link is chosen from the list, and the map and sightings follow', async () => {
    fakeServer(linksAnswers([raft, party]));
    openApp(page);
    const options = await screen.findAllByRole<HTMLInputElement>('radio');
    expect(options.map(({ checked }) => checked)).toEqual([true, false]);
    fireEvent.click(screen.getByRole('radio', { name: /14 Long-tailed Duck .* 12 % likely/u }));
    screen.getByRole('img', { name: /12 % likely one flock/u });
    expect(screen.getAllByText('anywhere in the section')).toHaveLength(2);
    fireEvent.keyDown(window, { key: 'k' });
    screen.getByRole('img', { name: /^Map\..* 96 % likely/u });
    fireEvent.keyDown(window, { key: 'j' });
    screen.getByRole('img', { name: /^Map\..* 12 % likely/u });
  });

  test('the time line scrubs through the window, and a sentence says what is seen', async () => {
    fakeServer(linksAnswers([raft, party]));
    openApp(page);
    const slider = await screen.findByRole('slider', { name: /Show what was seen by 11:00/u });
    screen.getByText(
      'By 11:00, 5 of 5 flocks had been seen, both sightings among them; 3 have a noted place and are on the map.',
    );
    // Minutes from the beginning of the window.
    expect([slider.getAttribute('min'), slider.getAttribute('max')]).toEqual(['0', '180']);
    fireEvent.change(slider, { target: { value: '51' } });
    expect(slider.getAttribute('aria-valuetext')).toBe('08:51, 2 flocks seen so far');
    screen.getByText(/^By 08:51, 2 of 5 flocks .*, the first sighting among them, the second not/u);
    expect(document.querySelectorAll('.map-link')).toHaveLength(0);
    fireEvent.click(screen.getByRole('button', { name: 'Second, 08:52' }));
    screen.getByText(/^By 08:52, 3 of 5 flocks .*, both sightings among them/u);
    expect(document.querySelectorAll('.map-link')).toHaveLength(1);
    screen.getByText('List of the 3 flocks seen by then');
    // Another link begins with the whole window.
    fireEvent.click(screen.getByRole('radio', { name: /Long-tailed Duck/u }));
    screen.getByText(/^By 11:00/u);
  });

  test('says what to do where there is none, and what is withheld', async () => {
    const sentence = 'North Bay in window w1: you see it once your own tally there is in.';
    fakeServer(linksAnswers([], { withheld: [sentence] }));
    openApp(page);
    await screen.findByText('No two sightings look like one flock.');
    screen.getByText(sentence);
    expect(screen.queryByRole('button', { name: /^Confirm/u })).toBeNull();
  });

  test('says that it is loading, and why it is refused', async () => {
    fakeServer(
      linksAnswers(
        [],
        {},
        {
          CountLinks: () => {
            throw new RefusalAnswer(
              'NOT_ALLOWED',
              'You may not review: you take part as observer.',
            );
          },
        },
      ),
    );
    openApp(page);
    await screen.findByText('Loading possible double counts.');
    const alert = await screen.findByText('You may not review: you take part as observer.');
    expect(alert.closest('[role=alert]')).not.toBeNull();
  });
});

describe('what can be done about a link', () => {
  useCleanBrowser();

  test('it is confirmed with a reason, about the review that was shown', async () => {
    const server = fakeServer(linksAnswers([raft], {}, given));
    openApp(page);
    fireEvent.click(await screen.findByRole('button', { name: /^Confirm/u }));
    await screen.findByText('Say why, so that anyone can follow the ruling.');
    expect(rulingsGiven(server)).toEqual([]);
    fireEvent.change(screen.getByLabelText('Reason'), { target: { value: 'Seen to swim.' } });
    fireEvent.click(screen.getByRole('button', { name: /^Confirm/u }));
    await waitFor(() => expect(rulingsGiven(server)).toHaveLength(1));
    expect(rulingsGiven(server)[0]).toMatchObject({
      target: { kind: 'link', link: raft.id },
      decision: { kind: 'confirm-link' },
      reason: 'Seen to swim.',
      replaces: null,
      inputHash: 'hash-1',
    });
  });

  test('after a ruling it goes on to the next, or rules anew in place of the other', async () => {
    const confirmed = { ...raft, ruling: 'confirmed', deducted: true };
    const server = fakeServer(
      linksAnswers([confirmed, party], { rulings: [ruling('APPLIED')] }, given),
    );
    openApp(page);
    await screen.findByText('A ruling is given.');
    screen.getByText('✓ Ruled one flock: 380 birds taken off South Bay.');
    screen.getByText('“Seen to swim.”');
    fireEvent.click(screen.getByRole('button', { name: 'Rule anew' }));
    fireEvent.change(screen.getByLabelText('Reason'), { target: { value: 'It was another.' } });
    fireEvent.click(screen.getByRole('button', { name: /^Reject/u }));
    await waitFor(() => expect(rulingsGiven(server)).toHaveLength(1));
    expect(rulingsGiven(server)[0]).toMatchObject({
      decision: { kind: 'reject-link' },
      replaces: 'r1',
    });
    fireEvent.click(await screen.findByRole('button', { name: 'Next double count' }));
    expect(screen.getByRole<HTMLInputElement>('radio', { name: /Long-tailed/u }).checked).toBe(
      true,
    );
  });

  test('a ruling that waits for a second person is said to', async () => {
    fakeServer(linksAnswers([raft], { rulings: [ruling('NEEDS_SECOND')] }));
    openApp(page);
    await screen.findByText(/^◐ A ruling waits for a second person; 380 birds would be taken off/u);
  });

  test('a stale one is told, the page loaded anew, and the reason kept', async () => {
    const server = fakeServer(
      linksAnswers(
        [raft],
        {},
        {
          GiveRuling: () => {
            throw new RefusalAnswer('STALE', 'The count has changed since you opened this page.');
          },
        },
      ),
    );
    openApp(page);
    fireEvent.change(await screen.findByLabelText('Reason'), { target: { value: 'It swam.' } });
    server.answers = {
      ...linksAnswers([{ ...raft, probability: 0.91 }], { inputHash: 'hash-2' }),
      GiveRuling: server.answers['GiveRuling'],
    };
    fireEvent.click(screen.getByRole('button', { name: /^Reject/u }));
    expect((await screen.findByRole('alert')).textContent).toContain('The count has changed');
    await screen.findByRole('radio', { name: /91 % likely/u });
    expect(screen.getByLabelText<HTMLTextAreaElement>('Reason').value).toBe('It swam.');
    fireEvent.click(screen.getByRole('button', { name: /^Reject/u }));
    await waitFor(() =>
      expect(rulingsGiven(server).map(({ inputHash }) => inputHash)).toEqual(['hash-1', 'hash-2']),
    );
  });

  test('the observers of both sightings can be asked', async () => {
    const server = fakeServer(
      linksAnswers(
        [raft, party],
        {},
        { AskQuery: { askQuery: { __typename: 'ObserverQuery', id: 'q' } } },
      ),
    );
    openApp(page);
    const whom = await screen.findByLabelText<HTMLSelectElement>('Whom');
    expect([...whom.options].map(({ text }) => text)).toEqual([ingrid.name, tom.name]);
    await ask(server, 'Did they swim south?');
    // Below the threshold it is no disagreement: the question is about the tally.
    fireEvent.click(screen.getByRole('radio', { name: /Long-tailed/u }));
    screen.getByText(/name its section and time/u);
    await ask(server, 'Which way did the ducks go?');
    expect(queriesAsked(server)).toMatchObject([
      { disagreementId: `possible-double-count:${raft.id}`, toPersonId: 'o1' },
      { disagreementId: null, toPersonId: 'o1', question: 'Which way did the ducks go?' },
    ]);
  });

  test('who may not rule can read everything', async () => {
    fakeServer(linksAnswers([raft], {}, {}, ['REVIEW']));
    openApp(page);
    await screen.findByText('Compilers rule here. You can read everything.');
    expect(screen.queryByRole('button', { name: /^Confirm/u })).toBeNull();
    expect(screen.queryByLabelText('Question')).toBeNull();
  });
});

async function ask(server: FakeServer, question: string): Promise<void> {
  const before = queriesAsked(server).length;
  fireEvent.change(screen.getByLabelText('Question'), { target: { value: question } });
  fireEvent.click(screen.getByRole('button', { name: 'Ask' }));
  await waitFor(() => expect(queriesAsked(server)).toHaveLength(before + 1));
}

function rulingsGiven(server: FakeServer): readonly RulingInput[] {
  return inputsOf(server, 'GiveRuling') as readonly RulingInput[];
}

function queriesAsked(server: FakeServer): readonly AskQueryInput[] {
  return inputsOf(server, 'AskQuery') as readonly AskQueryInput[];
}

function inputsOf(server: FakeServer, mutation: string): readonly unknown[] {
  return server.asked
    .filter(({ name }) => name === mutation)
    .map(({ variables }) => variables['input']);
}
