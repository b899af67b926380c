import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { Rule } from '../../../server/core/model/protocol.js';

const NAMES: Readonly<Record<Rule, MessageDescriptor>> = {
  designated: msg`designated`,
  highest: msg`highest`,
  mean: msg`mean`,
  median: msg`median`,
  'random-effects': msg`random effects`,
  'weighted-mean': msg`weighted mean`,
  'robust-mean': msg`robust mean`,
};

/** A consensus rule as people read it: `random-effects` → "random effects". */
export function ruleName(rule: string): string {
  const names: Readonly<Record<string, MessageDescriptor | undefined>> = NAMES;
  const name = names[rule];
  return name === undefined ? rule : i18n._(name);
}
