import { fireEvent, screen, waitFor } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { RulingInput } from '../../web/src/graphql/generated/graphql.js';
import { cell, compilerAnswers, disagreement } from './compiler-count.js';
import { fakeServer, RefusalAnswer, type FakeServer } from './fake-server.js';
import { openApp, useCleanBrowser } from './open-app.js';

const page = '/counts/c1/disagreements/d1';

describe('the review of a disagreement', () => {
  useCleanBrowser();

  test('says why no single truth fits all the tallies of the place', async () => {
    fakeServer(compilerAnswers([disagreement()]));
    openApp(page);
    await screen.findByText(/^No single truth fits all the tallies: at least 65 birds must be/u);
    screen.getByText(cell.witness ?? '');
  });

  test('says nothing of it where one truth fits', async () => {
    const fits = { ...cell, feasible: true, birdsInConflict: 0, witness: null };
    fakeServer(compilerAnswers([disagreement({ cell: fits })]));
    openApp(page);
    await screen.findByText(disagreement().text);
    expect(screen.queryByText(/No single truth/u)).toBeNull();
  });
});

describe('a ruling is about what was shown', () => {
  useCleanBrowser();

  test('it is sent with the hash of the review; a stale one is told, and the page loaded anew', async () => {
    const server = fakeServer(
      compilerAnswers(
        [disagreement()],
        {},
        {
          GiveRuling: () => {
            throw new RefusalAnswer('STALE', 'The count has changed since you opened this page.');
          },
        },
      ),
    );
    openApp(page);
    fireEvent.change(await screen.findByLabelText('Reason'), { target: { value: 'As drafted.' } });
    server.answers = {
      ...compilerAnswers([disagreement({ text: 'They now differ on 40.' })], {
        inputHash: 'hash-2',
      }),
      GiveRuling: server.answers['GiveRuling'],
    };
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    expect((await screen.findByRole('alert')).textContent).toContain('The count has changed');
    await screen.findByText('They now differ on 40.');
    // What was typed is still there, and goes out with the new hash.
    expect(screen.getByLabelText<HTMLTextAreaElement>('Reason').value).toBe('As drafted.');
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    await waitFor(() => expect(hashesGiven(server)).toEqual(['hash-1', 'hash-2']));
  });

  test('of several notes settled together, each goes with the hash that the one before made', async () => {
    let given = 0;
    const answers = compilerAnswers(
      ['d1', 'd2', 'd3'].map((id) => disagreement({ id, severity: 'NOTE' })),
      {},
      {
        GiveRuling: ({ input }) => {
          given += 1;
          const { id } = input as RulingInput;
          return {
            giveRuling: {
              __typename: 'Ruling',
              id,
              state: 'APPLIED',
              text: '',
              inputHash: `after-${given}`,
            },
          };
        },
      },
    );
    const server = fakeServer(answers);
    openApp('/counts/c1/disagreements');
    fireEvent.change(await screen.findByLabelText('Reason for all of them'), {
      target: { value: 'Small.' },
    });
    fireEvent.click(screen.getByRole('button', { name: 'Let the draft stand' }));
    await waitFor(() => expect(hashesGiven(server)).toEqual(['hash-1', 'after-1', 'after-2']));
  });
});

function hashesGiven(server: FakeServer): readonly unknown[] {
  return server.asked
    .filter(({ name }) => name === 'GiveRuling')
    .map(({ variables }) => (variables['input'] as RulingInput).inputHash);
}
