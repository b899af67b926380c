import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { CountState } from '../graphql/generated/graphql.js';

const STATE_NAMES: Readonly<Record<CountState, MessageDescriptor>> = {
  OPEN: msg({ message: 'open', context: 'state of a count' }),
  CLOSED: msg({ message: 'closed', context: 'state of a count' }),
  SIGNED: msg({ message: 'signed', context: 'state of a count' }),
  SEALED: msg({ message: 'sealed', context: 'state of a count' }),
};

/** How far a count has come, within a sentence: `open`. */
export function stateName(state: CountState): string {
  return i18n._(STATE_NAMES[state]);
}
