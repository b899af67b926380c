import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { CAUTIONS, LAST_WORD } from '../../../server/core/cautions.js';
import { language } from '../ui/language.js';

/** What the tool can say about safety, and who has the last word. */
export function Cautions(props: { readonly open?: boolean }): ReactNode {
  return (
    <details className="notice" data-kind="caution" open={props.open ?? false}>
      <summary>
        <Trans>Before you go out</Trans>
      </summary>
      <ul className="stack-tight">
        {CAUTIONS.map((caution) => (
          <li key={caution.en}>{caution[language()]}</li>
        ))}
      </ul>
      <p className="soft">{LAST_WORD[language()]}</p>
    </details>
  );
}
