import { i18n } from '@lingui/core';
import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { StatisticNote } from './agreement-notes.js';

/** Method and source of a statistic, one click away; `here` says what it rests on in this count. */
export function MethodNote(props: {
  readonly note: StatisticNote;
  readonly here: string;
}): ReactNode {
  const { note, here } = props;
  const parts = [
    [t`Says`, i18n._(note.says)],
    [t`Does not say`, i18n._(note.doesNotSay)],
    [t`Method`, note.method.map((sentence) => i18n._(sentence)).join(' ')],
    [t`Source`, i18n._(note.source)],
    [t`Assumes`, i18n._(note.assumes)],
    [t`Here`, here],
  ] as const;
  const name = i18n._(note.name);
  return (
    <details className="method">
      <summary>
        <Trans>Method and source: {name}</Trans>
      </summary>
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
