import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation, useQuery } from 'urql';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { CountCoverage } from '../plans/documents.js';
import { useAnnounce } from '../ui/announcer.js';
import { Answer } from '../ui/answer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed } from '../ui/words.js';
import { MakeInvite } from './documents.js';
import { roleName } from '../ui/role-names.js';

/** Who takes part, who has signed in, and new invite links. */
export function PeoplePage(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({ query: CountCoverage, variables: { id: props.countId } });
  const [invite, setInvite] = useState<{ readonly name: string; readonly link: string } | null>(
    null,
  );
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, makeInvite] = useMutation(MakeInvite);
  const announce = useAnnounce();

  async function make(personId: string): Promise<void> {
    setTrouble(null);
    setInvite(null);
    const answer = await makeInvite({ countId: props.countId, personId });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else if (answer.data) {
      const { person, path } = answer.data.invite;
      setInvite({ name: person.name, link: new URL(path, window.location.origin).href });
      const { name } = person;
      announce(t`An invite link for ${name} was made.`);
    }
  }

  return (
    <Page
      title={t`People`}
      width="reading"
      intro={t`Who takes part in this count, and how they get in.`}
    >
      <div className="stack">
        {trouble === null ? null : <TroubleNotice trouble={trouble} />}
        {invite === null ? null : <InviteLink name={invite.name} link={invite.link} />}
        <Answer
          result={result}
          skeleton={<Skeleton rows={8} label={t`Loading the people of this count.`} />}
          retry={() => again({ requestPolicy: 'network-only' })}
        >
          {({ count }) => (
            <div className="wide" role="region" aria-label={t`People of this count`} tabIndex={0}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">
                      <Trans>Name</Trans>
                    </th>
                    <th scope="col">
                      <Trans>Role</Trans>
                    </th>
                    <th scope="col">
                      <Trans>Has signed in</Trans>
                    </th>
                    <th scope="col">
                      <Trans>Invite</Trans>
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {count.people.map(({ person: { id, name }, roles, hasJoined }) => (
                    <tr key={id}>
                      <th scope="row">{name}</th>
                      <td>{listed(roles.map(roleName))}</td>
                      <td>{hasJoined ? t`● yes` : t`○ not yet`}</td>
                      <td>
                        <button
                          type="button"
                          className="button"
                          disabled={fetching}
                          aria-label={t`Make a link for ${name}`}
                          onClick={() => void make(id)}
                        >
                          <Trans>Make a link</Trans>
                        </button>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
        </Answer>
      </div>
    </Page>
  );
}

function InviteLink(props: { readonly name: string; readonly link: string }): ReactNode {
  const { name } = props;
  const [copied, setCopied] = useState<'no' | 'yes' | 'failed'>('no');
  async function copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(props.link);
      setCopied('yes');
    } catch {
      // Browsers refuse this on pages without https.
      setCopied('failed');
    }
  }
  return (
    <Notice kind="done" title={t`Send this link to ${name}, and to nobody else.`}>
      <p>
        <code className="hash">{props.link}</code>
      </p>
      <p>
        <Trans>It is shown once. Earlier links of {name} no longer work.</Trans>
      </p>
      <p className="row">
        <button type="button" className="button" onClick={() => void copy()}>
          <Trans>Copy the link</Trans>
        </button>
        <span role="status">
          {copied === 'yes'
            ? t`Copied.`
            : copied === 'failed'
              ? t`This browser does not allow it: select the link and copy it.`
              : ''}
        </span>
      </p>
    </Notice>
  );
}
