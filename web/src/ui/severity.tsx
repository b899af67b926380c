import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { Severity } from '../graphql/generated/graphql.js';

const marks: Readonly<
  Record<Severity, { readonly mark: string; readonly word: MessageDescriptor }>
> = {
  SERIOUS: { mark: '■', word: msg`Serious` },
  QUESTIONED: { mark: '◧', word: msg`Questioned` },
  NOTE: { mark: '□', word: msg({ message: 'Note', context: 'severity' }) },
};

export function severityName(severity: Severity): string {
  return i18n._(marks[severity].word);
}

/** Severity as a shape and a word. */
export function SeverityMark(props: { readonly severity: Severity }): ReactNode {
  return (
    <span className="severity" data-severity={props.severity}>
      <span aria-hidden="true">{marks[props.severity].mark} </span>
      {severityName(props.severity)}
    </span>
  );
}
