import { fireEvent, screen, waitFor } from '@testing-library/react';
import { expect, test } from 'vitest';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart, ownTally } from './observer-count.js';
import { openApp, reloadApp, useCleanBrowser } from './open-app.js';

useCleanBrowser();

const query = {
  id: 'q1',
  about: 'Scaup in North Bay.',
  question: 'Did you see the bills?',
  askedAt: '2027-01-16T19:00:00-05:00',
  askedBy: { id: 'o9', name: 'Mara Quist' },
  to: { id: 'o1', name: 'Ingrid Vale' },
  answer: null,
  answeredAt: null,
};

const tally = {
  __typename: 'Tally' as const,
  ...ownTally({ version: 2, replaces: 't0', reason: 'One raft twice.' }),
};

test('a question stands on the page of the tally, and a half-written answer outlives a reload', async () => {
  const server = fakeServer(
    observerAnswers(ownPart({ queries: [query], myTallies: [tally] }), {
      AnswerQuery: ({ queryId, answer }) => ({
        answerQuery: {
          __typename: 'ObserverQuery',
          id: queryId,
          answer,
          answeredAt: '2027-01-16T20:00:00-05:00',
        },
      }),
    }),
  );
  openApp('/counts/c1/assignments/a1');
  await screen.findByText('Did you see the bills?');
  // The version says why it was made.
  expect(screen.getByText('One raft twice.')).toBeTruthy();
  fireEvent.change(screen.getByLabelText('Your answer'), { target: { value: 'Of two, yes.' } });
  reloadApp();
  const field = await screen.findByLabelText<HTMLTextAreaElement>('Your answer');
  expect(field.value).toBe('Of two, yes.');
  fireEvent.click(screen.getByRole('button', { name: 'Send the answer' }));
  await waitFor(() => {
    const sent = server.asked.filter(({ name }) => name === 'AnswerQuery');
    expect(sent.map(({ variables }) => variables)).toEqual([
      { queryId: 'q1', answer: 'Of two, yes.' },
    ]);
  });
  await waitFor(() => expect(localStorage.getItem('countersign.answer.q1')).toBeNull());
});
