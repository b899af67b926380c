import { BEAUFORT, SEA_STATES } from '../../../server/core/model/conditions.js';
import { inWords, percent } from './words.js';

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
  const { visibility, beaufort, seaState, iceCover, glare, disturbance, optics } = conditions;
  const parts: string[] = [];
  if (visibility !== null) parts.push(`visibility ${inWords(visibility)}`);
  if (beaufort !== null) {
    parts.push(`wind force ${beaufort} (${BEAUFORT[beaufort]?.name ?? 'not on the scale'})`);
  }
  if (seaState !== null) {
    parts.push(`sea ${SEA_STATES[seaState]?.name ?? 'not on the scale'} (${seaState})`);
  }
  if (iceCover !== null) parts.push(iceCover === 0 ? 'no ice' : `ice on ${percent(iceCover)}`);
  if (glare !== null) parts.push(glare === 'none' ? 'no glare' : `${glare} glare`);
  if (disturbance !== null) parts.push(`disturbance: ${disturbance}`);
  if (optics !== null) parts.push(optics);
  return parts.join(', ');
}
