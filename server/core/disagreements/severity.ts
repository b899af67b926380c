import type { Protocol } from '../model/protocol.js';
import type { Severity } from '../model/result.js';

/** By the number of birds at stake, against the protocol's two thresholds. */
export function severityOfBirds(birds: number, protocol: Protocol): Severity {
  if (birds >= protocol.seriousBirds) return 'serious';
  return birds >= protocol.questionedBirds ? 'questioned' : 'note';
}

/** By how many standard deviations two counts lie apart (ISO 13528: 2 questioned, 3 serious). */
export function severityOfSpread(z: number, protocol: Protocol): Severity {
  if (Math.abs(z) >= protocol.seriousAt) return 'serious';
  return Math.abs(z) >= protocol.questionedAt ? 'questioned' : 'note';
}
