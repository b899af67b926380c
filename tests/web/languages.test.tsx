import { fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { chooseLanguage } from '../../web/src/ui/language.js';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';

function choose(language: string): void {
  fireEvent.change(screen.getByRole('combobox', { name: /^(Language|Langue)$/u }), {
    target: { value: language },
  });
}

describe('the language of the pages', () => {
  useCleanBrowser();
  afterEach(() => chooseLanguage('en'));

  test('changes in the middle of a line: texts, taxa and numbers, and nothing entered is lost', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp(form);
    const field = await screen.findByRole('combobox', { name: 'Add a line' });
    // A name from memory; it is read in every language.
    fireEvent.change(field, { target: { value: 'harelde kakawi' } });
    fireEvent.keyDown(field, { key: 'Enter' });
    fireEvent.change(screen.getByLabelText('Birds'), { target: { value: '1250' } });
    expect(screen.getByRole('heading', { name: /^Long-tailed Duck/u })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Line done' }));

    choose('fr');
    expect(await screen.findByText('Qu’avez-vous vu ?')).toBeTruthy();
    expect(document.documentElement.lang).toBe('fr');
    // Thousands are parted by a narrow no-break space in French (CLDR).
    expect(await screen.findByRole('button', { name: /^Harelde kakawi 1\u202f250/u })).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Relire et envoyer' }));
    expect(
      screen.getAllByText('Dites quand vous avez commencé à compter, comme 08:15.'),
    ).not.toEqual([]);

    choose('en');
    expect(await screen.findByRole('button', { name: /^Long-tailed Duck 1,250/u })).toBeTruthy();
    expect(document.documentElement.lang).toBe('en');
  });

  test('is kept in this browser, and told to the server', async () => {
    const server = fakeServer(observerAnswers(ownPart()));
    openApp(form);
    await screen.findByRole('combobox', { name: 'Add a line' });
    expect(new Set(server.asked.map(({ language }) => language))).toEqual(new Set(['en']));
    choose('fr');
    await screen.findByRole('combobox', { name: 'Ajouter une ligne' });
    expect(localStorage.getItem('countersign.language')).toBe('"fr"');
    await waitFor(() => expect(server.asked.at(-1)?.language).toBe('fr'));
  });
});
