import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { countOf, listed, span } from '../ui/words.js';
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
      announce('The window is closed.');
    }
  }

  return (
    <section className="stack" aria-labelledby="windows-heading">
      <h2 id="windows-heading">Windows</h2>
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      <ul className="plain-list stack-tight">
        {count.windows.map((window) => {
          const missing = count.assignments.filter(
            (one) => one.window.id === window.id && !one.submitted,
          );
          const name = span(window.start, window.end, timeZone);
          return (
            <li key={window.id} className="stack-tight">
              <div className="row">
                <span>
                  {name}: {window.closed ? 'closed' : 'open'}
                  {window.closed || missing.length === 0
                    ? ''
                    : `, ${countOf(missing.length, 'assignment')} without a tally`}
                </span>
                {window.closed || !mayClose || asking === window.id ? null : (
                  <button type="button" className="button" onClick={() => setAsking(window.id)}>
                    Close this window …
                  </button>
                )}
              </div>
              {asking === window.id ? (
                <Notice kind="caution" title={`Close the window ${name}?`}>
                  <p>
                    No tally is taken for it from then on, and compilers see all of them.
                    {missing.length === 0
                      ? ' Every assignment has its tally.'
                      : ` Still without a tally: ${listed(missing.map(({ person }) => person.name))}.`}
                  </p>
                  <div className="row">
                    <button
                      type="button"
                      className="button"
                      data-kind="main"
                      disabled={fetching}
                      onClick={() => void closeNow(window.id)}
                    >
                      Close the window
                    </button>
                    <button type="button" className="button" onClick={() => setAsking(null)}>
                      Keep it open
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
