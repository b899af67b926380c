import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { DisagreementKind } from '../../../server/core/model/result.js';

const NAMES: Readonly<Record<DisagreementKind, MessageDescriptor>> = {
  'count-spread': msg`count spread`,
  'seen-by-one': msg`seen by one`,
  'identified-differently': msg`identified differently`,
  'resolution-gap': msg`resolution gap`,
  'over-resolved': msg`over-resolved identification`,
  'coverage-gap': msg`coverage gap`,
  'time-mismatch': msg`time mismatch`,
  'not-counted': msg`not counted`,
  'possible-double-count': msg`possible double count`,
  'sub-counts': msg`sub counts`,
  implausible: msg`implausible`,
};

/** A kind of disagreement as people read it: `count-spread` → "count spread". */
export function kindName(kind: string): string {
  const names: Readonly<Record<string, MessageDescriptor | undefined>> = NAMES;
  const name = names[kind];
  return name === undefined ? kind : i18n._(name);
}
