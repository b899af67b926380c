import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import type { GivenRulingFragment, RulingState } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { TextArea } from '../ui/text-field.js';
import { TroubleNotice } from '../ui/notice.js';
import { dayAndClock } from '../ui/words.js';
import { SecondRuling, WithdrawRuling } from './ruling-documents.js';
import { ofReviews } from './listed-disagreement.js';

const stateWords: Readonly<Record<RulingState, MessageDescriptor>> = {
  APPLIED: msg`✓ Applied`,
  NEEDS_SECOND: msg`◐ Waits for a second person, since its author counted there`,
  STALE: msg`△ Stale: its tallies have changed since, so it is not applied`,
  WITHOUT_TARGET: msg`△ What it was about is no longer there, so it is not applied`,
  WITHDRAWN: msg`× Taken back`,
  REPLACED: msg`× Replaced by a later ruling`,
};

/** One ruling: what, why, by whom, and whether it counts. */
export function RulingItem(props: {
  readonly ruling: GivenRulingFragment;
  readonly maySecond: boolean;
  readonly mayWithdraw: boolean;
  readonly timeZone: string;
}): ReactNode {
  const { ruling } = props;
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [reason, setReason] = useState('');
  const [{ fetching }, second] = useMutation(SecondRuling);
  const [{ fetching: isWithdrawing }, withdraw] = useMutation(WithdrawRuling);
  const announce = useAnnounce();

  async function secondIt(): Promise<void> {
    setTrouble(null);
    const answer = await second({ rulingId: ruling.id }, ofReviews);
    if (answer.error) setTrouble(readTrouble(answer.error));
    else announce(t`You seconded the ruling.`);
  }

  async function takeBack(): Promise<void> {
    setTrouble(null);
    const answer = await withdraw({ rulingId: ruling.id, reason: reason.trim() }, ofReviews);
    if (answer.error) setTrouble(readTrouble(answer.error));
    else announce(t`The ruling was taken back.`);
  }

  return (
    <li className="stack-tight ruling" data-state={ruling.state}>
      <p>{ruling.text}</p>
      <p>{quoted(ruling.reason)}</p>
      <p className="soft small">
        {givenWords(ruling, props.timeZone)}. {i18n._(stateWords[ruling.state])}.
      </p>
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      {ruling.state === 'NEEDS_SECOND' && props.maySecond ? (
        <div>
          <button
            type="button"
            className="button"
            data-kind="main"
            disabled={fetching}
            onClick={() => void secondIt()}
          >
            <Trans>Second this ruling</Trans>
          </button>
        </div>
      ) : null}
      {ruling.state !== 'WITHDRAWN' && ruling.state !== 'REPLACED' && props.mayWithdraw ? (
        <details>
          <summary>
            <Trans>Take it back</Trans>
          </summary>
          <form
            className="stack-tight"
            onSubmit={(event) => {
              event.preventDefault();
              void takeBack();
            }}
          >
            <TextArea
              label={t`Why`}
              hint={t`The ruling stays on record, with this reason.`}
              required
              value={reason}
              onChange={setReason}
            />
            <div>
              <button
                type="submit"
                className="button"
                disabled={isWithdrawing || reason.trim() === ''}
              >
                <Trans>Take the ruling back</Trans>
              </button>
            </div>
          </form>
        </details>
      ) : null}
    </li>
  );
}

function quoted(text: string): string {
  return t`“${text}”`;
}

/** By whom a ruling was given, and when. */
function givenWords({ by, at, secondedBy }: GivenRulingFragment, timeZone: string): string {
  const [author, time] = [by.name, dayAndClock(at, timeZone)];
  if (!secondedBy) return `${author}, ${time}`;
  const seconder = secondedBy.name;
  return t`${author}, ${time}, seconded by ${seconder}`;
}
