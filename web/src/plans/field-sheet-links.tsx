import type { ReactNode } from 'react';

const papers = [
  { paper: 'a4', label: 'A4' },
  { paper: 'letter', label: 'Letter' },
] as const;

/** An assignment's field sheet as PDF, to print and take along: a page of the server's own. */
export function FieldSheetLinks(props: {
  readonly assignmentId: string;
  /** Whose, where several stand in one list. */
  readonly of?: string;
}): ReactNode {
  const whose = props.of === undefined ? '' : ` of ${props.of}`;
  return (
    <span className="row">
      {papers.map(({ paper, label }) => (
        <a
          key={paper}
          className="button"
          data-kind="quiet"
          href={`/field-sheets/${encodeURIComponent(props.assignmentId)}.pdf?paper=${paper}`}
          target="_blank"
          rel="noreferrer"
        >
          {label}
          <span className="for-readers">, field sheet{whose} as PDF, in a new tab</span>
        </a>
      ))}
    </span>
  );
}
