import { i18n } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import { language } from '../ui/language.js';

const papers = [
  { paper: 'a4', label: msg`A4` },
  { paper: 'letter', label: msg`Letter` },
] as const;

/** An assignment's field sheet as PDF, to print and take along: a page of the server's own. */
export function FieldSheetLinks(props: {
  readonly assignmentId: string;
  /** Whose, where several stand in one list. */
  readonly of?: string;
}): ReactNode {
  const { of: name } = props;
  const rest =
    name === undefined
      ? t`, field sheet as PDF, in a new tab`
      : t`, field sheet of ${name} as PDF, in a new tab`;
  return (
    <span className="row">
      {papers.map(({ paper, label }) => (
        <a
          key={paper}
          className="button"
          data-kind="quiet"
          href={`/field-sheets/${encodeURIComponent(props.assignmentId)}.pdf?paper=${paper}&lang=${language()}`}
          target="_blank"
          rel="noreferrer"
        >
          {i18n._(label)}
          <span className="for-readers">{rest}</span>
        </a>
      ))}
    </span>
  );
}
