import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import {
  ACTIVITIES,
  METHODS,
  type Activity,
  type Method,
} from '../../../server/core/model/snapshot.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, listed } from '../ui/words.js';
import { wholeNumber, type DraftLine } from './draft.js';

/** The number of a line as it reads in a list: `1,200`, `40–60`, `present`, or a dash while it is missing. */
export function quantityWords(line: DraftLine): string {
  if (line.quantity === 'present') return t`present`;
  if (line.quantity === 'range') {
    const low = wholeNumber(line.low);
    const high = wholeNumber(line.high);
    return low === null || high === null ? '–' : `${birds(low)}–${birds(high)}`;
  }
  const number = wholeNumber(line.number);
  return number === null ? '–' : birds(number);
}

const activities: Readonly<Record<Activity, MessageDescriptor>> = {
  water: msg`water`,
  land: msg`land`,
  'flying-through': msg`flying through`,
  flushed: msg`flushed`,
};

const methods: Readonly<Record<Method, MessageDescriptor>> = {
  'one-by-one': msg`one by one`,
  block: msg`block`,
  sample: msg`sample`,
  guess: msg`guess`,
};

const scopes: Readonly<Record<string, MessageDescriptor>> = {
  'all-waterbirds': msg`all waterbirds`,
  waterfowl: msg`waterfowl`,
};

/** What the birds did, as the server says it. */
export function activityWords(activity: string): string {
  const known = ACTIVITIES.find((one) => one === activity);
  return known === undefined ? activity : i18n._(activities[known]);
}

/** How a number was counted, as the server says it. */
export function methodWords(method: string): string {
  const known = METHODS.find((one) => one === method);
  return known === undefined ? method : i18n._(methods[known]);
}

/** What was set out to be counted: a named scope, or taxa. */
export function scopeWords(scope: string): string {
  const known = scopes[scope];
  return known === undefined
    ? listed(scope.split(', ').map((taxon) => readTaxon(taxon).common))
    : i18n._(known);
}

/** What else the line says, briefly: `in blocks of 50, flying through, 3 males, likely`. */
export function detailWords(line: DraftLine): string {
  const parts: string[] = [];
  if (line.method === 'block') {
    const block = wholeNumber(line.block);
    const size = block === null ? null : birds(block);
    parts.push(size === null ? t`in blocks` : t`in blocks of ${size}`);
  } else if (line.method !== 'one-by-one')
    parts.push(line.method === 'sample' ? t`by a sample` : t`guess`);
  if (line.activity !== 'water') parts.push(activityWords(line.activity));
  const male = line.male.trim();
  const female = line.female.trim();
  const adult = line.adult.trim();
  const immature = line.immature.trim();
  if (male !== '') parts.push(t`${male} male`);
  if (female !== '') parts.push(t`${female} female-type`);
  if (adult !== '') parts.push(t`${adult} adult`);
  if (immature !== '') parts.push(t`${immature} immature`);
  const flock = line.flock.trim();
  if (flock !== '') parts.push(t`flock ${flock}`);
  if (line.time !== '') parts.push(line.time);
  if (line.lat.trim() !== '') parts.push(t`position noted`);
  if (line.certainty === 'likely') parts.push(t`likely`);
  const note = line.note.trim();
  if (note !== '') parts.push(t`“${note}”`);
  return parts.join(', ');
}
