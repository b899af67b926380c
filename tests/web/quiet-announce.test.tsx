import { act, fireEvent, screen } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, useCleanBrowser } from './open-app.js';

useCleanBrowser();
afterEach(() => vi.useRealTimers());

test('a screen reader hears where the count has come to after a burst of taps, not each tap', async () => {
  fakeServer(observerAnswers(ownPart()));
  openApp('/counts/c1/assignments/a1');
  const field = await screen.findByRole('combobox', { name: 'Add a line' });
  fireEvent.change(field, { target: { value: 'mallard' } });
  fireEvent.keyDown(field, { key: 'Enter' });
  vi.useFakeTimers();
  const said = (): string =>
    screen
      .getAllByRole('status')
      .map(({ textContent }) => textContent)
      .join(' ');
  for (let tap = 1; tap <= 12; tap += 1) {
    fireEvent.click(screen.getByRole('button', { name: 'Add 1' }));
    act(() => {
      vi.advanceTimersByTime(300);
    });
    expect(said()).not.toContain('Mallard');
  }
  act(() => {
    vi.advanceTimersByTime(1500);
  });
  expect(said()).toContain('Mallard: 12');
});
