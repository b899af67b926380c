import { i18n, type MessageDescriptor } from '@lingui/core';

/** A label: a message of a table, or a text that is there already (a name). */
export type Label = string | MessageDescriptor;

/** A label in the language of the pages. */
export function said(label: Label): string {
  return typeof label === 'string' ? label : i18n._(label);
}
