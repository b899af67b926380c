import { i18n } from '@lingui/core';
import { msg } from '@lingui/core/macro';

/** The sixteen points of the compass, clockwise from north: short and in full. */
const points = [
  [msg`N`, msg`north`],
  [msg`NNE`, msg`north-north-east`],
  [msg`NE`, msg`north-east`],
  [msg`ENE`, msg`east-north-east`],
  [msg`E`, msg`east`],
  [msg`ESE`, msg`east-south-east`],
  [msg`SE`, msg`south-east`],
  [msg`SSE`, msg`south-south-east`],
  [msg`S`, msg`south`],
  [msg`SSW`, msg`south-south-west`],
  [msg`SW`, msg`south-west`],
  [msg`WSW`, msg`west-south-west`],
  [msg`W`, msg`west`],
  [msg`WNW`, msg`west-north-west`],
  [msg`NW`, msg`north-west`],
  [msg`NNW`, msg`north-north-west`],
] as const;

/** The nearest of the compass's sixteen points: 45 → `NE`, `north-east`. */
export function compassPoint(degrees: number): { readonly short: string; readonly long: string } {
  const sixteenth = Math.round(degrees / 22.5);
  const [short, long] = points[((sixteenth % 16) + 16) % 16] ?? points[0];
  return { short: i18n._(short), long: i18n._(long) };
}
