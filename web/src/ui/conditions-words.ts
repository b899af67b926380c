import { t } from '@lingui/core/macro';
import { GLARES, VISIBILITIES } from '../../../server/core/model/conditions.js';
import { beaufortName, glareName, seaStateName, visibilityName } from './condition-terms.js';
import { percent } from './words.js';

/** Conditions as the API has them. */
export interface NotedConditions {
  readonly visibility: string | null;
  readonly beaufort: number | null;
  readonly seaState: number | null;
  readonly iceCover: number | null;
  readonly glare: string | null;
  readonly disturbance: string | null;
  readonly optics: string | null;
}

/**
 * What it was like to count, in one line: `visibility good, wind force 4 (moderate breeze), sea
 * slight (3), ice on 20 %, strong glare, disturbance: two boats, telescope`. Empty if nothing was noted.
 */
export function conditionsWords(conditions: NotedConditions): string {
  const { beaufort, seaState, iceCover, disturbance, optics } = conditions;
  const visibility = VISIBILITIES.find((one) => one === conditions.visibility);
  const glare = GLARES.find((one) => one === conditions.glare);
  const parts: string[] = [];
  if (visibility !== undefined) parts.push(t`visibility ${visibilityName(visibility)}`);
  if (beaufort !== null) parts.push(t`wind force ${beaufort} (${beaufortName(beaufort)})`);
  if (seaState !== null) parts.push(t`sea ${seaStateName(seaState)} (${seaState})`);
  if (iceCover !== null) parts.push(iceCover === 0 ? t`no ice` : t`ice on ${percent(iceCover)}`);
  if (glare !== undefined)
    parts.push(glare === 'none' ? t`no glare` : t`${glareName(glare)} glare`);
  if (disturbance !== null) parts.push(t`disturbance: ${disturbance}`);
  if (optics !== null) parts.push(optics);
  return parts.join(', ');
}
