import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import { fakeServer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, reloadApp, useCleanBrowser } from './open-app.js';

const form = '/counts/c1/assignments/a1';

async function openGrid(): Promise<void> {
  fakeServer(observerAnswers(ownPart()));
  openApp(form);
  fireEvent.click(await screen.findByRole('button', { name: 'Type in a paper sheet' }));
}

/** Types into the cell that has the focus, as a keyboard does. */
function type(text: string): void {
  const cell = focused();
  fireEvent.change(cell, { target: { value: text } });
}

function key(name: string): void {
  fireEvent.keyDown(focused(), { key: name });
}

function focused(): HTMLElement {
  if (!(document.activeElement instanceof HTMLElement)) throw new Error('Nothing has the focus.');
  return document.activeElement;
}

/** Where Tab goes: the next that takes the focus, as browsers have it and this one does not. */
function tab(): void {
  const all = [...document.querySelectorAll<HTMLElement>('table input, table button')].filter(
    (one) => !one.hasAttribute('disabled'),
  );
  const next = all[all.indexOf(focused()) + 1];
  if (next === undefined) throw new Error('Nothing comes after this cell.');
  next.focus();
}

describe('typing in a paper sheet', () => {
  useCleanBrowser();

  test('goes by code, tab, number, Enter, and the next row is there', async () => {
    await openGrid();
    for (const [code, number] of [
      ['grsc', '12'],
      ['GRSC/LESC', '40-60'],
      ['cang', 'present'],
      ['Aythya sp.', '0'],
    ] as const) {
      type(code);
      tab();
      type(number);
      key('Enter');
    }
    expect(focused().getAttribute('aria-label')).toBe('Row 5, code or name');
    key('ArrowUp');
    expect(focused().getAttribute('aria-label')).toBe('Row 4, code or name');
    fireEvent.click(screen.getByRole('button', { name: 'Sheet done' }));
    const shown = screen
      .getAllByRole('button', { name: /Change this line/ })
      .map((line) => line.textContent.replace('. Change this line', ''));
    expect(shown).toEqual([
      'Aythya sp.0',
      'Canada Goosepresent',
      'Greater/Lesser Scaup40–60',
      'Greater Scaup12',
    ]);
  });

  test('asks in place about an unknown code, and takes the nearest name by Enter', async () => {
    await openGrid();
    type('aythya marilla');
    key('Enter');
    const row = screen.getAllByRole('row')[1];
    if (row === undefined) throw new Error('The sheet has a row.');
    expect(row.textContent).toContain(
      '“aythya marilla” is not a known taxon. Did you mean Greater Scaup?',
    );
    expect(focused().textContent).toBe('Use Greater Scaup');
    fireEvent.click(focused());
    expect(focused().getAttribute('aria-label')).toBe('Row 1, number');
    expect(within(row).queryByRole('button', { name: /^Use/ })).toBeNull();
    expect(row.textContent).toContain('Greater Scaup');
    // Nothing typed is lost if it is not mended: it is named before sending.
    key('Enter');
    type('qqqq');
    fireEvent.click(screen.getByRole('button', { name: 'Sheet done' }));
    fireEvent.click(screen.getByRole('button', { name: 'Look over and send' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Line 2, qqqq');
  });

  test('has optional columns, and everything in it is undone and outlives a reload', async () => {
    await openGrid();
    fireEvent.click(screen.getByRole('button', { name: 'More columns' }));
    fireEvent.change(screen.getByLabelText('Row 1, code or name'), { target: { value: 'mall' } });
    fireEvent.change(screen.getByLabelText('Row 1, number'), { target: { value: '200' } });
    fireEvent.change(screen.getByLabelText('Row 1, block'), { target: { value: '50' } });
    fireEvent.change(screen.getByLabelText('Row 1, males'), { target: { value: '3' } });
    fireEvent.click(screen.getByRole('button', { name: 'Remove row 1' }));
    expect(screen.getByLabelText<HTMLInputElement>('Row 1, code or name').value).toBe('');
    fireEvent.click(screen.getByRole('button', { name: /Undo/ }));
    expect(screen.getByLabelText<HTMLInputElement>('Row 1, males').value).toBe('3');
    reloadApp();
    const line = await screen.findByRole('button', { name: /Change this line/ });
    expect(line.textContent).toContain('Mallardin blocks of 50, 3 male');
  });
});
