import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import type { MyAssignmentsQuery } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { forgetKept, readKept, writeKept } from '../ui/kept.js';
import { TextArea } from '../ui/text-field.js';
import { TroubleNotice } from '../ui/notice.js';
import { dayAndClock } from '../ui/words.js';
import { AnswerQuery } from './documents.js';

type Query = MyAssignmentsQuery['count']['queries'][number];

/** Questions that compilers put to this observer, open ones first. */
export function QueriesToMe(props: {
  readonly queries: readonly Query[];
  readonly timeZone: string;
}): ReactNode {
  if (props.queries.length === 0) return null;
  const open = props.queries.filter(({ answer }) => answer === null);
  const answered = props.queries.filter((query) => !open.includes(query));
  return (
    <section className="stack" aria-labelledby="queries-to-me">
      <h2 id="queries-to-me">
        <Trans>Questions to you</Trans>
      </h2>
      {open.length === 0 ? (
        <p className="soft">
          <Trans>All are answered. Thank you.</Trans>
        </p>
      ) : null}
      {open.map((query) => (
        <OpenQuery key={query.id} query={query} timeZone={props.timeZone} />
      ))}
      {answered.map((query) => (
        <div key={query.id} className="notice stack-tight">
          <p className="soft small">{query.about}</p>
          <p>
            <strong>{askedBy(query.askedBy.name)}</strong> {query.question}
          </p>
          <p>
            <strong>
              <Trans>You answered:</Trans>
            </strong>{' '}
            {query.answer}
          </p>
        </div>
      ))}
    </section>
  );
}

/** An answer that is not sent yet is kept on the phone, as a draft is. */
function keyOf({ id }: Query): string {
  return `countersign.answer.${id}`;
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function OpenQuery(props: { readonly query: Query; readonly timeZone: string }): ReactNode {
  const { query } = props;
  const { about } = query;
  const asker = query.askedBy.name;
  const time = dayAndClock(query.askedAt, props.timeZone);
  const [answer, setAnswer] = useState(() => readKept(keyOf(query), isText) ?? '');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, send] = useMutation(AnswerQuery);
  const announce = useAnnounce();

  async function submit(): Promise<void> {
    setTrouble(null);
    const result = await send(
      { queryId: query.id, answer: answer.trim() },
      { additionalTypenames: ['ObserverQuery', 'Count'] },
    );
    if (result.error) setTrouble(readTrouble(result.error));
    else {
      forgetKept(keyOf(query));
      announce(t`Your answer was sent.`);
    }
  }

  return (
    <form
      className="notice stack-tight"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <p className="soft small">
        <Trans>
          {about} Asked by {asker}, {time}.
        </Trans>
      </p>
      <p className="sentence">{query.question}</p>
      <TextArea
        label={t`Your answer`}
        hint={t`Say what you remember. “I cannot tell any more” is a good answer too.`}
        required
        value={answer}
        onChange={(text) => {
          setAnswer(text);
          writeKept(keyOf(query), text);
        }}
      />
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      <div>
        <button
          type="submit"
          className="button"
          data-kind="main"
          disabled={fetching || answer.trim() === ''}
        >
          {fetching ? t`Sending …` : t`Send the answer`}
        </button>
      </div>
    </form>
  );
}

function askedBy(person: string): string {
  return t`${person} asked:`;
}
