import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { Severity } from '../graphql/generated/graphql.js';

const marks: Readonly<
  Record<Severity, { readonly mark: string; readonly word: MessageDescriptor }>
> = {
  SERIOUS: { mark: '■', word: msg`Serious` },
  QUESTIONED: { mark: '◧', word: msg`Questioned` },
  NOTE: { mark: '□', word: msg`Note` },
};

/** Severity as a shape and a word. */
export function SeverityMark(props: { readonly severity: Severity }): ReactNode {
  const { mark, word } = marks[props.severity];
  return (
    <span className="severity" data-severity={props.severity}>
      <span aria-hidden="true">{mark} </span>
      {i18n._(word)}
    </span>
  );
}
