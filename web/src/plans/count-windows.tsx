import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { listed, span } from '../ui/words.js';
import { CloseWindow } from './documents.js';

type Count = CountCoverageQuery['count'];

/** Closing a window ends the taking in of tallies, so it asks once more. */
export function CountWindows(props: {
  readonly count: Count;
  readonly timeZone: string;
}): ReactNode {
  const { count, timeZone } = props;
  const [asking, setAsking] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, close] = useMutation(CloseWindow);
  const announce = useAnnounce();
  const mayClose = count.may.includes('CLOSE_WINDOW');

  async function closeNow(windowId: string): Promise<void> {
    setTrouble(null);
    const answer = await close({ countId: count.id, windowId }, { additionalTypenames: ['Count'] });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else {
      setAsking(null);
      announce(t`The window is closed.`);
    }
  }

  return (
    <section className="stack" aria-labelledby="windows-heading">
      <h2 id="windows-heading">
        <Trans>Windows</Trans>
      </h2>
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      <ul className="plain-list stack-tight">
        {count.windows.map((window) => {
          const missing = count.assignments.filter(
            (one) => one.window.id === window.id && !one.submitted,
          );
          const name = span(window.start, window.end, timeZone);
          const names = listed(missing.map(({ person }) => person.name));
          return (
            <li key={window.id} className="stack-tight">
              <div className="row">
                <span>{windowWords(name, window.closed, missing.length)}</span>
                {window.closed || !mayClose || asking === window.id ? null : (
                  <button type="button" className="button" onClick={() => setAsking(window.id)}>
                    <Trans>Close this window …</Trans>
                  </button>
                )}
              </div>
              {asking === window.id ? (
                <Notice kind="caution" title={t`Close the window ${name}?`}>
                  <p>
                    <Trans>
                      No tally is taken for it from then on, and compilers see all of them.
                    </Trans>{' '}
                    {missing.length === 0
                      ? t`Every assignment has its tally.`
                      : t`Still without a tally: ${names}.`}
                  </p>
                  <div className="row">
                    <button
                      type="button"
                      className="button"
                      data-kind="main"
                      disabled={fetching}
                      onClick={() => void closeNow(window.id)}
                    >
                      <Trans>Close the window</Trans>
                    </button>
                    <button type="button" className="button" onClick={() => setAsking(null)}>
                      <Trans>Keep it open</Trans>
                    </button>
                  </div>
                </Notice>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function windowWords(name: string, isClosed: boolean, missing: number): string {
  if (isClosed) return t`${name}: closed`;
  if (missing === 0) return t`${name}: open`;
  return plural(missing, {
    one: `${name}: open, # assignment without a tally`,
    other: `${name}: open, # assignments without a tally`,
  });
}
