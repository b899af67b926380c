import { fireEvent, screen, waitFor } from '@testing-library/react';
import { describe, expect, test } from 'vitest';
import { fakeServer, RefusalAnswer } from './fake-server.js';
import { observerAnswers, ownPart } from './observer-count.js';
import { openApp, setOnline, useCleanBrowser } from './open-app.js';

const refuse = (code: string, message: string) => () => {
  throw new RefusalAnswer(code, message);
};

describe('refused, failed and out of range', () => {
  useCleanBrowser();

  test('a wrong password is said without blame, and what was typed stays', async () => {
    fakeServer({
      Me: { me: null },
      SignIn: refuse('WRONG_PASSWORD', 'Name and password do not belong together. Try again.'),
    });
    openApp('/sign-in');
    fireEvent.change(await screen.findByLabelText('Your name'), { target: { value: 'Greta' } });
    fireEvent.change(screen.getByLabelText('Password'), { target: { value: 'guess' } });
    fireEvent.click(screen.getByRole('button', { name: 'Sign in' }));
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toContain('Name and password do not belong together.');
    expect(screen.getByLabelText<HTMLInputElement>('Your name').value).toBe('Greta');
  });

  test('who is not signed in is asked to, and comes back to where they wanted to go', async () => {
    const server = fakeServer({ Me: { me: null } });
    openApp('/counts/c1/assignments');
    await screen.findByRole('heading', { name: 'Sign in' });
    expect(window.location.search).toContain(encodeURIComponent('/counts/c1/assignments'));
    const person = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' };
    server.answers = { ...observerAnswers(ownPart()), SignIn: { signIn: person } };
    fireEvent.change(screen.getByLabelText('Your name'), { target: { value: 'Ingrid Vale' } });
    fireEvent.change(screen.getByLabelText('Password'), { target: { value: 'right' } });
    fireEvent.click(screen.getByRole('button', { name: 'Sign in' }));
    await screen.findByRole('heading', { name: 'My assignments' });
    expect(window.location.pathname).toBe('/counts/c1/assignments');
  });

  test('an address elsewhere never follows a sign-in', async () => {
    const person = { __typename: 'Person', id: 'o1', name: 'Ingrid Vale' };
    const server = fakeServer({ Me: { me: null } });
    openApp('/sign-in?next=//elsewhere.example/steal');
    fireEvent.change(await screen.findByLabelText('Your name'), {
      target: { value: 'Ingrid Vale' },
    });
    fireEvent.change(screen.getByLabelText('Password'), { target: { value: 'right' } });
    server.answers = { ...observerAnswers(ownPart()), SignIn: { signIn: person } };
    fireEvent.click(screen.getByRole('button', { name: 'Sign in' }));
    await screen.findByRole('heading', { name: 'My assignments' });
    expect(window.location.host).not.toContain('elsewhere');
  });

  test('a spent invite says what to do next', async () => {
    fakeServer({
      Me: { me: null },
      AcceptInvite: refuse('INVITE_SPENT', 'This invite link no longer works.'),
    });
    openApp('/invite/old-token');
    fireEvent.click(await screen.findByRole('button', { name: 'Open my assignments' }));
    expect((await screen.findByRole('alert')).textContent).toContain('no longer works');
    screen.getByText(/Ask the leader of the count for a new invite link/u);
  });

  test('an observer is refused the audit trail in the server’s own words', async () => {
    const words = 'Observers see the audit trail once the count is sealed.';
    fakeServer(observerAnswers(ownPart(), { CountAudit: refuse('NOT_ALLOWED', words) }));
    openApp('/counts/c1/audit');
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain(words));
  });

  test('a failure of the server is told apart from a refusal, and shows nothing of its inside', async () => {
    fakeServer(
      observerAnswers(ownPart(), {
        CountAudit: refuse('INTERNAL_SERVER_ERROR', 'SQLITE_CORRUPT at row 7'),
      }),
    );
    openApp('/counts/c1/audit');
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toContain('Something went wrong on the server.');
    expect(alert.textContent).not.toContain('SQLITE');
  });

  test('out of range, a page that was never kept says so and tries again when asked', async () => {
    const server = fakeServer(
      observerAnswers(ownPart(), { CountAudit: refuse('NOT_ALLOWED', 'No.') }),
    );
    openApp('/counts/c1/assignments');
    await screen.findByRole('heading', { name: 'North Bay' });
    server.unreachable = true;
    setOnline(false);
    window.history.pushState(null, '', '/counts/c1/audit');
    const alert = await screen.findByRole('alert');
    expect(alert.textContent).toContain('No connection.');
    server.unreachable = false;
    setOnline(true);
    fireEvent.click(screen.getByRole('button', { name: 'Try again' }));
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('No.'));
  });

  test('only what a person may do is offered', async () => {
    fakeServer(observerAnswers(ownPart()));
    openApp('/counts/c1/assignments');
    await screen.findByRole('link', { name: 'My assignments' });
    for (const name of ['Coverage', 'People', 'Disagreements', 'Compiled count', 'Audit trail']) {
      expect(screen.queryByRole('link', { name })).toBeNull();
    }
  });
});
