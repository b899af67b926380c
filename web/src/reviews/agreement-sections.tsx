import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';

export interface SectionHead {
  readonly id: string;
  readonly title: string;
  /** In the list at the top. */
  readonly short: string;
}

/** One part of the page, with the place that the list at the top leads to. */
export function AgreementSection(props: {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}): ReactNode {
  const { id, title } = props;
  return (
    <section className="stack agreement-section" aria-labelledby={id}>
      <h2 id={id} tabIndex={-1}>
        {title}
      </h2>
      {props.children}
    </section>
  );
}

/** Where to go on a long page. */
export function OnThisPage(props: { readonly parts: readonly SectionHead[] }): ReactNode {
  return (
    <nav aria-label={t`On this page`} className="not-printed">
      <ul className="plain-list on-this-page">
        {props.parts.map(({ id, short }) => (
          <li key={id}>
            <a href={`#${id}`}>{short}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
