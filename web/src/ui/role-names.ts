import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { Role } from '../graphql/generated/graphql.js';

const NAMES: Readonly<Record<Role, MessageDescriptor>> = {
  LEADER: msg`leader`,
  OBSERVER: msg`observer`,
  COMPILER: msg`compiler`,
};

/** A person's part in a count, as it stands in a sentence. */
export function roleName(role: Role): string {
  return i18n._(NAMES[role]);
}
