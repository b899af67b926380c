import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { v7 } from 'uuid';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { ActForm } from '../ui/act-form.js';
import { SelectField } from '../ui/select-field.js';
import { TextArea } from '../ui/text-field.js';
import { dayAndClock } from '../ui/words.js';
import { AskQuery } from './ruling-documents.js';
import { ofReviews } from './listed-disagreement.js';

interface Asked {
  readonly id: string;
  readonly question: string;
  readonly askedAt: string;
  readonly askedBy: { readonly name: string };
  readonly to: { readonly name: string };
  readonly answer?: string | null | undefined;
}

/** Questions to observers about a disagreement or a link: those asked, and a new one. */
export function AskForm(props: {
  readonly countId: string;
  readonly disagreement: {
    /** `null`: about the tally as a whole. */
    readonly id: string | null;
    readonly observers: readonly { readonly id: string; readonly name: string }[];
    readonly queries: readonly Asked[];
  };
  readonly mayAsk: boolean;
  readonly timeZone: string;
}): ReactNode {
  const { disagreement } = props;
  const [toId, setToId] = useState(disagreement.observers[0]?.id ?? '');
  const [question, setQuestion] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, ask] = useMutation(AskQuery);
  const announce = useAnnounce();

  async function submit(): Promise<void> {
    setTrouble(null);
    const answer = await ask(
      {
        input: {
          id: v7(),
          countId: props.countId,
          disagreementId: disagreement.id,
          toPersonId: toId,
          question: question.trim(),
        },
      },
      ofReviews,
    );
    if (answer.error) setTrouble(readTrouble(answer.error));
    else {
      setQuestion('');
      announce(t`The question was sent.`);
    }
  }

  return (
    <section className="panel stack" aria-labelledby="ask-heading">
      <h2 id="ask-heading">
        <Trans>Questions to observers</Trans>
      </h2>
      {disagreement.queries.map((query) => (
        <AskedQuestion key={query.id} query={query} timeZone={props.timeZone} />
      ))}
      {!props.mayAsk || disagreement.observers.length === 0 ? (
        disagreement.queries.length === 0 ? (
          <p className="soft">
            <Trans>None asked.</Trans>
          </p>
        ) : null
      ) : (
        <details>
          <summary>
            <Trans>Ask an observer</Trans>
          </summary>
          <ActForm trouble={trouble} act={submit}>
            <SelectField
              label={t`Whom`}
              options={disagreement.observers.map((person) => ({
                value: person.id,
                label: person.name,
              }))}
              value={toId}
              onChange={setToId}
            />
            <TextArea
              label={t`Question`}
              hint={
                disagreement.id === null
                  ? t`They do not see what the others counted; ask so that it does not show. Nothing but your words tells them which flock you mean: name its section and time.`
                  : t`They do not see what the others counted; ask so that it does not show.`
              }
              required
              value={question}
              onChange={setQuestion}
            />
            <div>
              <button
                type="submit"
                className="button"
                disabled={fetching || question.trim() === ''}
              >
                {fetching ? t`Sending …` : t`Ask`}
              </button>
            </div>
          </ActForm>
        </details>
      )}
    </section>
  );
}

function AskedQuestion(props: { readonly query: Asked; readonly timeZone: string }): ReactNode {
  const { question, answer, askedBy, to, askedAt } = props.query;
  const [asker, asked] = [askedBy.name, to.name];
  const time = dayAndClock(askedAt, props.timeZone);
  return (
    <div className="stack-tight">
      <p>
        <strong>
          <Trans>
            {asker} to {asked}:
          </Trans>
        </strong>{' '}
        {question}
      </p>
      <p className={answer ? '' : 'soft'}>
        {answer ? t`“${answer}”` : t`No answer yet, asked ${time}.`}
      </p>
    </div>
  );
}
