import { t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import { useMemo, useState, type ReactNode } from 'react';
import { useMutation, useQuery } from 'urql';
import type { Role, SignOffStandingQuery } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { Answer } from '../ui/answer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { roleName } from '../ui/role-names.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed } from '../ui/words.js';
import { SealCount, SignOff, SignOffStanding } from './documents.js';

type Standing = SignOffStandingQuery['count'];

/** Answers that name any of these are asked for anew. */
const refreshed = {
  additionalTypenames: ['Count', 'Review', 'CompiledCount', 'SignOff', 'Seal', 'AuditTrail'],
};

/** What still stands in the way of the signature, and the signature: in the same place on every review page. */
export function SignOffPanel(props: { readonly countId: string }): ReactNode {
  const [result] = useQuery({
    query: SignOffStanding,
    variables: { id: props.countId },
    context: useMemo(
      () => ({ additionalTypenames: ['Ruling', ...refreshed.additionalTypenames] }),
      [],
    ),
  });
  return (
    <section className="panel stack" aria-labelledby="sign-off-heading">
      <h2 id="sign-off-heading">
        <Trans>Sign-off</Trans>
      </h2>
      <Answer
        result={result}
        skeleton={<Skeleton rows={3} label={t`Loading what stands in the way of the sign-off.`} />}
      >
        {({ count }) => <StandingView count={count} />}
      </Answer>
    </section>
  );
}

function StandingView(props: { readonly count: Standing }): ReactNode {
  const { count } = props;
  const { openMatters } = count.review;
  const open = openMatters.length;
  const { seal, signOffs } = count.compiled;
  const given = signOffs.filter(({ inputHash }) => inputHash === count.review.inputHash);
  const needed = count.protocol.signOffs.filter((role) => !given.some((one) => one.as === role));
  const mine = needed.filter((role) => count.myRoles.includes(role));
  if (seal) {
    return <Notice kind="done" title={t`Sealed. Nothing in this count changes any more.`} />;
  }
  const roles = listed(needed.map(roleName));
  return (
    <>
      {open === 0 ? (
        <p>
          <Trans>Nothing stands in the way.</Trans>
        </p>
      ) : (
        <details className="open-matters">
          <summary>
            <Plural value={open} one="One matter is open" other="# matters are open" />
          </summary>
          <ul className="stack-tight">
            {openMatters.map((matter) => (
              <li key={matter}>{matter}</li>
            ))}
          </ul>
        </details>
      )}
      {given.length === 0 ? null : (
        <ul className="plain-list">
          {given.map((one) => (
            <li key={`${one.by.id}-${one.as}`}>{signedWords(one.by.name, one.as)}</li>
          ))}
        </ul>
      )}
      {needed.length === 0 ? null : (
        <p className="soft small">
          <Trans>Still to sign: {roles}.</Trans>
        </p>
      )}
      <SignButtons count={count} roles={mine} isOpen={open > 0} needsMore={needed.length > 0} />
    </>
  );
}

function signedWords(name: string, as: Role): string {
  const role = roleName(as);
  return t`✓ ${name}, as ${role}`;
}

function SignButtons(props: {
  readonly count: Standing;
  readonly roles: readonly Role[];
  readonly isOpen: boolean;
  readonly needsMore: boolean;
}): ReactNode {
  const { count, roles } = props;
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching: isSigning }, signOff] = useMutation(SignOff);
  const [{ fetching: isSealing }, seal] = useMutation(SealCount);
  const announce = useAnnounce();

  async function sign(role: Role): Promise<void> {
    setTrouble(null);
    const answer = await signOff(
      { countId: count.id, as: role, inputHash: count.review.inputHash },
      refreshed,
    );
    if (answer.error) setTrouble(readTrouble(answer.error));
    else {
      const signed = roleName(role);
      announce(t`You signed off as ${signed}.`);
    }
  }

  async function sealNow(): Promise<void> {
    setTrouble(null);
    const answer = await seal({ countId: count.id }, refreshed);
    if (answer.error) setTrouble(readTrouble(answer.error));
    else announce(t`The count is sealed.`);
  }

  const maySign = count.may.includes('SIGN_OFF');
  return (
    <div className="stack-tight">
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      {roles.map((role) => (
        <button
          key={role}
          type="button"
          className="button"
          data-kind="main"
          disabled={!maySign || props.isOpen || isSigning}
          onClick={() => void sign(role)}
        >
          {isSigning ? t`Signing …` : signOffWords(role)}
        </button>
      ))}
      {!maySign && roles.length > 0 && count.state === 'OPEN' ? (
        <p className="soft small">
          <Trans>Signing off comes after the leader has closed all windows.</Trans>
        </p>
      ) : null}
      {!props.needsMore && count.may.includes('SEAL') ? (
        <button
          type="button"
          className="button"
          data-kind="main"
          disabled={isSealing}
          onClick={() => void sealNow()}
        >
          {isSealing ? t`Sealing …` : t`Seal the count`}
        </button>
      ) : null}
    </div>
  );
}

function signOffWords(as: Role): string {
  const role = roleName(as);
  return t`Sign off as ${role}`;
}
