import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { useLocation, useSearchParams } from 'wouter';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { ActForm } from '../ui/act-form.js';
import { TextField } from '../ui/text-field.js';
import { Page } from '../ui/page.js';
import { SignIn } from './documents.js';
import { useSession } from './session.js';

/** Leaders and compilers sign in by name and password; observers open their invite link. */
export function SignInPage(props: {
  /** What whoever is not signed in has to know first. */
  readonly aside?: ReactNode;
}): ReactNode {
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, signIn] = useMutation(SignIn);
  const { changed } = useSession();
  const [, navigate] = useLocation();
  const [search] = useSearchParams();

  async function submit(): Promise<void> {
    setTrouble(null);
    const answer = await signIn({ name, password });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else if (answer.data) {
      changed();
      navigate(ownPath(search.get('next')));
    }
  }

  return (
    <Page title={t`Sign in`} width="entry" intro={t`For leaders and compilers of a count.`}>
      {props.aside}
      <ActForm trouble={trouble} act={submit}>
        <TextField
          label={t`Your name`}
          autoComplete="username"
          required
          value={name}
          onChange={setName}
        />
        <TextField
          label={t`Password`}
          type="password"
          autoComplete="current-password"
          required
          value={password}
          onChange={setPassword}
        />
        <button type="submit" className="button" data-kind="main" disabled={fetching}>
          {fetching ? t`Signing in …` : t`Sign in`}
        </button>
        <p className="soft">
          <Trans>
            Observers need no password: open the invite link that the leader of your count sent you.
          </Trans>
        </p>
      </ActForm>
    </Page>
  );
}

/** Only a path of this site: an address from elsewhere must not send anybody away after signing in. */
function ownPath(next: string | null): string {
  return next !== null && next.startsWith('/') && !next.startsWith('//') ? next : '/';
}
