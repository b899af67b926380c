import type { ReactNode } from 'react';
import type { StatisticNote } from './agreement-notes.js';

/** Method and source of a statistic, one click away; `here` says what it rests on in this count. */
export function MethodNote(props: {
  readonly note: StatisticNote;
  readonly here: string;
}): ReactNode {
  const { note, here } = props;
  const parts = [
    ['Says', note.says],
    ['Does not say', note.doesNotSay],
    ['Method', note.method],
    ['Source', note.source],
    ['Assumes', note.assumes],
    ['Here', here],
  ] as const;
  return (
    <details className="method">
      <summary>Method and source: {note.name}</summary>
      <dl>
        {parts.map(([term, text]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
