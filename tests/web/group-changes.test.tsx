import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import type { RulingInput } from '../../web/src/graphql/generated/graphql.js';
import { mergeSentences, splitSentences } from '../../web/src/reviews/group-change-words.js';
import { cell, compiler, compilerAnswers, disagreement, scaup } from './compiler-count.js';
import { fakeServer, type FakeServer } from './fake-server.js';
import { openApp, useCleanBrowser } from './open-app.js';

const page = '/counts/c1/disagreements/d1';

const applied = (variables: Readonly<Record<string, unknown>>) => ({
  giveRuling: {
    __typename: 'Ruling',
    id: (variables['input'] as RulingInput).id,
    state: 'APPLIED',
    text: '',
  },
});

function given(server: FakeServer): readonly RulingInput[] {
  return server.asked
    .filter(({ name }) => name === 'GiveRuling')
    .map(({ variables }) => variables['input'] as RulingInput);
}

async function decide(kind: string): Promise<void> {
  const select = await screen.findByLabelText<HTMLSelectElement>('Decision');
  const option = within(select).getByRole<HTMLOptionElement>('option', { name: kind });
  fireEvent.change(select, { target: { value: option.value } });
}

describe('merging and splitting groups on the review page', () => {
  useCleanBrowser();

  test('a merge says what it does, asks for a reason, and sends the taxa of the other group', async () => {
    const server = fakeServer(compilerAnswers([disagreement()], {}, { GiveRuling: applied }));
    openApp(page);
    await decide('Settled together with another group');
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    screen.getByText('Choose the other group.');
    screen.getByText(/^Say why/u);
    const other = screen.getByLabelText<HTMLSelectElement>('Together with');
    fireEvent.change(other, {
      target: {
        value: within(other)
          .getByRole('option', { name: 'Redhead: 39 birds' })
          .getAttribute('value'),
      },
    });
    // 115 + 40 and 100 + 38.
    screen.getByText(/Ingrid Vale 155 and Tom Reed 138\./u);
    screen.getByText(/where there are now 108 and 39\./u);
    fireEvent.change(screen.getByLabelText('Reason'), {
      target: { value: 'One raft; both counted it whole.' },
    });
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    await screen.findByRole('heading', { name: 'Disagreements', level: 1 });
    expect(given(server)).toMatchObject([
      {
        disagreementId: 'd1',
        decision: { kind: 'merge-groups', with: ['Aythya americana'] },
        reason: 'One raft; both counted it whole.',
      },
    ]);
  });

  test('a split sends every taxon once, and tells of birds paired across the parts', async () => {
    const server = fakeServer(compilerAnswers([disagreement()], {}, { GiveRuling: applied }));
    openApp(page);
    await decide('The group is taken apart');
    fireEvent.change(screen.getByLabelText('Reason'), { target: { value: 'Two flocks.' } });
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    screen.getByText('Put at least one taxon into another part.');
    expect(given(server)).toEqual([]);
    fireEvent.change(screen.getByLabelText('Lesser Scaup'), { target: { value: '2' } });
    screen.getByText('Lesser Scaup: Ingrid Vale 10 and Tom Reed 60.');
    screen.getByText(/Between Ingrid Vale and Tom Reed, 50 birds of each are paired across/u);
    // A third part can be opened now that the second is in use.
    fireEvent.change(screen.getByLabelText('Greater Scaup'), { target: { value: '3' } });
    fireEvent.click(screen.getByRole('button', { name: 'Give this ruling' }));
    await screen.findByRole('heading', { name: 'Disagreements', level: 1 });
    expect(given(server)[0]?.decision).toEqual({
      kind: 'split-group',
      parts: [['Aythya affinis/marila'], ['Aythya affinis'], ['Aythya marila']],
    });
  });

  test('what cannot be done is not offered: one taxon is not taken apart, one group not merged', async () => {
    const group = { ...scaup, taxa: ['Aythya marila'] };
    fakeServer(compilerAnswers([disagreement({ group, cell: { ...cell, groups: [group] } })]));
    openApp(page);
    const select = await screen.findByLabelText<HTMLSelectElement>('Decision');
    const words = [...select.options].map(({ text }) => text);
    expect(words).toContain('Another rule sets the total');
    expect(words.filter((text) => /together|apart/u.test(text))).toEqual([]);
  });

  test('a ruling that changed a group stands in the list and by the group, and can be taken back', async () => {
    const ruling = {
      __typename: 'Ruling',
      id: 'r1',
      by: compiler,
      at: '2027-01-16T20:00:00-05:00',
      reason: 'One raft; both counted it whole.',
      state: 'APPLIED',
      text: 'Settled together with Aythya marila: Aythya affinis in s1:w1',
      replaces: null,
      secondedBy: null,
      target: {
        kind: 'group',
        cell: 's1:w1',
        group: ['Aythya affinis'],
        link: null,
        tally: null,
        line: null,
      },
      decision: {
        kind: 'merge-groups',
        observer: null,
        rule: null,
        from: null,
        to: null,
        numbers: null,
        with: ['Aythya marila'],
        parts: null,
      },
    };
    const server = fakeServer(
      compilerAnswers(
        [disagreement()],
        { rulings: [ruling] },
        {
          WithdrawRuling: { withdrawRuling: { ...ruling, state: 'WITHDRAWN' } },
        },
      ),
    );
    openApp('/counts/c1/disagreements');
    const section = await screen.findByRole('region', { name: 'Groups merged or taken apart' });
    within(section).getByText('“One raft; both counted it whole.”');
    fireEvent.click(within(section).getByText('Take it back'));
    fireEvent.change(within(section).getByLabelText('Why'), { target: { value: 'Two rafts.' } });
    fireEvent.click(within(section).getByRole('button', { name: 'Take the ruling back' }));
    await waitFor(() =>
      expect(server.asked.find(({ name }) => name === 'WithdrawRuling')?.variables).toEqual({
        rulingId: 'r1',
        reason: 'Two rafts.',
      }),
    );
    fireEvent.click(screen.getByRole('link', { name: disagreement().text }));
    const history = await screen.findByRole('region', { name: 'Rulings so far' });
    within(history).getByText(ruling.text);
  });
});

describe('what merging and splitting do, in words', () => {
  test('who set out to count only one of two groups is named', () => {
    const other = { id: 'g3', taxa: ['Mareca strepera'], totals: [], consensus: { number: 4 } };
    const ofTom = { ...other, totals: scaup.totals.slice(1) };
    expect(mergeSentences(scaup, ofTom).join(' ')).toContain(
      'Ingrid Vale set out to count only one of the two; of the other, none are added.',
    );
    expect(mergeSentences(scaup, { ...ofTom, totals: scaup.totals }).join(' ')).not.toContain(
      'set out',
    );
  });

  test('nothing is said of a split while all taxa are in one part', () => {
    expect(splitSentences(scaup, [scaup.taxa], cell)).toEqual([]);
  });

  test('parts between which no birds are paired lose none', () => {
    const sentences = splitSentences(
      { ...scaup, taxa: [...scaup.taxa, 'Aythya americana'] },
      [scaup.taxa, ['Aythya americana']],
      cell,
    );
    expect(sentences.join(' ')).not.toContain('paired across');
    expect(sentences).toHaveLength(2);
  });
});
