import { BEAUFORT, GLARES, SEA_STATES, VISIBILITIES, type Conditions } from './conditions.js';
import type { RowReader } from './row-reader.js';
import { say, type Saying } from './saying.js';

/** The conditions of a tally's row; `null` where none were noted. */
export function checkConditions(reader: RowReader): Conditions | null {
  const conditions: Conditions = {
    visibility: reader.word('visibility', VISIBILITIES, say('visibility')),
    beaufort: checkScale(reader, 'beaufort', say('Beaufort force'), BEAUFORT.length - 1),
    seaState: checkScale(
      reader,
      'sea-state',
      say('state of the sea (WMO code table 3700)'),
      SEA_STATES.length - 1,
    ),
    iceCover: reader.decimal(
      'ice-cover',
      { from: 0, to: 1 },
      say('the share of the section under ice, 0 to 1'),
    ),
    glare: reader.word('glare', GLARES, say('degree of glare')),
    disturbance: reader.text('disturbance'),
    optics: reader.text('optics'),
  };
  return Object.values(conditions).some((noted) => noted !== null) ? conditions : null;
}

/** A whole step of a scale that begins at 0. */
function checkScale(
  reader: RowReader,
  column: 'beaufort' | 'sea-state',
  what: Saying,
  last: number,
): number | null {
  const expected = say('a {what} from 0 to {last}, or nothing if it was not noted', { what, last });
  const step = reader.whole(column, expected);
  if (step === null || step <= last) return step;
  reader.fault(column, 'out-of-range', say('{step} is beyond the scale', { step }), expected);
  return null;
}
