import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import type { GivenRulingFragment, RulingState } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { TextArea } from '../ui/text-field.js';
import { TroubleNotice } from '../ui/notice.js';
import { dayAndClock } from '../ui/words.js';
import { SecondRuling, WithdrawRuling } from './ruling-documents.js';
import { reviewTypes } from './listed-disagreement.js';

const stateWords: Readonly<Record<RulingState, string>> = {
  APPLIED: '✓ Applied',
  NEEDS_SECOND: '◐ Waits for a second person, since its author counted there',
  STALE: '△ Stale: its tallies have changed since, so it is not applied',
  WITHOUT_TARGET: '△ What it was about is no longer there, so it is not applied',
  WITHDRAWN: '× Taken back',
  REPLACED: '× Replaced by a later ruling',
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
  const context = { additionalTypenames: reviewTypes };

  async function secondIt(): Promise<void> {
    setTrouble(null);
    const answer = await second({ rulingId: ruling.id }, context);
    if (answer.error) setTrouble(readTrouble(answer.error));
    else announce('You seconded the ruling.');
  }

  async function takeBack(): Promise<void> {
    setTrouble(null);
    const answer = await withdraw({ rulingId: ruling.id, reason: reason.trim() }, context);
    if (answer.error) setTrouble(readTrouble(answer.error));
    else announce('The ruling was taken back.');
  }

  return (
    <li className="stack-tight ruling" data-state={ruling.state}>
      <p>{ruling.text}</p>
      <p>“{ruling.reason}”</p>
      <p className="soft small">
        {ruling.by.name}, {dayAndClock(ruling.at, props.timeZone)}
        {ruling.secondedBy ? `, seconded by ${ruling.secondedBy.name}` : ''}.{' '}
        {stateWords[ruling.state]}.
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
            Second this ruling
          </button>
        </div>
      ) : null}
      {ruling.state !== 'WITHDRAWN' && ruling.state !== 'REPLACED' && props.mayWithdraw ? (
        <details>
          <summary>Take it back</summary>
          <form
            className="stack-tight"
            onSubmit={(event) => {
              event.preventDefault();
              void takeBack();
            }}
          >
            <TextArea
              label="Why"
              hint="The ruling stays on record, with this reason."
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
                Take the ruling back
              </button>
            </div>
          </form>
        </details>
      ) : null}
    </li>
  );
}
