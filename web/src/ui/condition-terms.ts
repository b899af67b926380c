import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';
import type { Glare, Visibility } from '../../../server/core/model/conditions.js';

/** The names of the Beaufort scale, force 0 first (server/core/model/conditions.ts has the source). */
const BEAUFORT_NAMES: readonly MessageDescriptor[] = [
  msg`calm`,
  msg`light air`,
  msg`light breeze`,
  msg`gentle breeze`,
  msg`moderate breeze`,
  msg`fresh breeze`,
  msg`strong breeze`,
  msg`near gale`,
  msg`gale`,
  msg`strong gale`,
  msg`storm`,
  msg`violent storm`,
  msg`hurricane`,
];

/** The names of the states of the sea, 0 first. */
const SEA_STATE_NAMES: readonly MessageDescriptor[] = [
  msg`calm, glassy`,
  msg`calm, rippled`,
  msg`smooth`,
  msg`slight`,
  msg({ message: 'moderate', context: 'state of the sea' }),
  msg`rough`,
  msg`very rough`,
  msg`high`,
  msg`very high`,
  msg`phenomenal`,
];

const VISIBILITY_NAMES: Readonly<Record<Visibility, MessageDescriptor>> = {
  good: msg({ message: 'good', context: 'visibility' }),
  moderate: msg({ message: 'moderate', context: 'visibility' }),
  poor: msg({ message: 'poor', context: 'visibility' }),
  'very-poor': msg({ message: 'very poor', context: 'visibility' }),
};

const GLARE_NAMES: Readonly<Record<Glare, MessageDescriptor>> = {
  none: msg({ message: 'none', context: 'glare' }),
  some: msg({ message: 'some', context: 'glare' }),
  strong: msg({ message: 'strong', context: 'glare' }),
};

const offScale = msg`not on the scale`;

export function beaufortName(force: number): string {
  return i18n._(BEAUFORT_NAMES[force] ?? offScale);
}

export function seaStateName(state: number): string {
  return i18n._(SEA_STATE_NAMES[state] ?? offScale);
}

export function visibilityName(visibility: Visibility): string {
  return i18n._(VISIBILITY_NAMES[visibility]);
}

export function glareName(glare: Glare): string {
  return i18n._(GLARE_NAMES[glare]);
}
