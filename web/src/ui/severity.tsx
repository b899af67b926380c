import type { ReactNode } from 'react';
import type { Severity } from '../graphql/generated/graphql.js';

const marks: Readonly<Record<Severity, { readonly mark: string; readonly word: string }>> = {
  SERIOUS: { mark: '■', word: 'Serious' },
  QUESTIONED: { mark: '◧', word: 'Questioned' },
  NOTE: { mark: '□', word: 'Note' },
};

/** Severity as a shape and a word. */
export function SeverityMark(props: { readonly severity: Severity }): ReactNode {
  const { mark, word } = marks[props.severity];
  return (
    <span className="severity" data-severity={props.severity}>
      <span aria-hidden="true">{mark} </span>
      {word}
    </span>
  );
}
