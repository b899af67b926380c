import { useState, type ReactNode } from 'react';
import { useMutation, useQuery } from 'urql';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { CountCoverage } from '../plans/documents.js';
import { useAnnounce } from '../ui/announcer.js';
import { Answer } from '../ui/answer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { inWords, listed } from '../ui/words.js';
import { MakeInvite } from './documents.js';

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
      announce(`An invite link for ${person.name} was made.`);
    }
  }

  return (
    <Page title="People" width="reading" intro="Who takes part in this count, and how they get in.">
      <div className="stack">
        {trouble === null ? null : <TroubleNotice trouble={trouble} />}
        {invite === null ? null : <InviteLink name={invite.name} link={invite.link} />}
        <Answer
          result={result}
          skeleton={<Skeleton rows={8} label="Loading the people of this count." />}
          retry={() => again({ requestPolicy: 'network-only' })}
        >
          {({ count }) => (
            <div className="wide" role="region" aria-label="People of this count" tabIndex={0}>
              <table>
                <thead>
                  <tr>
                    <th scope="col">Name</th>
                    <th scope="col">Role</th>
                    <th scope="col">Has signed in</th>
                    <th scope="col">Invite</th>
                  </tr>
                </thead>
                <tbody>
                  {count.people.map(({ person, roles, hasJoined }) => (
                    <tr key={person.id}>
                      <th scope="row">{person.name}</th>
                      <td>{listed(roles.map(inWords))}</td>
                      <td>{hasJoined ? '● yes' : '○ not yet'}</td>
                      <td>
                        <button
                          type="button"
                          className="button"
                          disabled={fetching}
                          aria-label={`Make a link for ${person.name}`}
                          onClick={() => void make(person.id)}
                        >
                          Make a link
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
    <Notice kind="done" title={`Send this link to ${props.name}, and to nobody else.`}>
      <p>
        <code className="hash">{props.link}</code>
      </p>
      <p>It is shown once. Earlier links of {props.name} no longer work.</p>
      <p className="row">
        <button type="button" className="button" onClick={() => void copy()}>
          Copy the link
        </button>
        <span role="status">
          {copied === 'yes'
            ? 'Copied.'
            : copied === 'failed'
              ? 'This browser does not allow it: select the link and copy it.'
              : ''}
        </span>
      </p>
    </Notice>
  );
}
