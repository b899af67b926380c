import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { birds } from './words.js';

const width = 132;
const height = 22;
const middle = height / 2;

/**
 * The one mark for "a number and how sure it is", the same on every page: a dot for the number, a
 * whisker for its interval, a pale bar from at least to at most. The scale starts at 0 on the left.
 */
export function Extent(props: {
  readonly number: number;
  readonly low: number;
  readonly high: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** The right end of the scale; by default the largest of the numbers shown. */
  readonly full?: number;
}): ReactNode {
  const { number, low, high, atLeast, atMost } = props;
  const full = Math.max(props.full ?? 0, number, high, atMost ?? 0, 1);
  const at = (value: number): number => 4 + (value / full) * (width - 8);
  const interval = t`${birds(number)}, interval ${birds(low)} to ${birds(high)}`;
  return (
    <svg
      className="extent"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={
        atLeast === undefined || atMost === undefined
          ? interval
          : t`${interval}, at least ${birds(atLeast)}, at most ${birds(atMost)}`
      }
    >
      <line x1={at(0)} x2={at(full)} y1={height - 2} y2={height - 2} stroke="var(--hairline)" />
      {atLeast === undefined || atMost === undefined ? null : (
        <rect
          className="mark-bounds"
          x={at(atLeast) - 1}
          width={Math.max(at(atMost) - at(atLeast), 1) + 2}
          y={middle - 6}
          height={12}
        />
      )}
      <path
        className="mark-interval"
        d={`M${at(low)} ${middle - 4}v8M${at(low)} ${middle}H${at(high)}M${at(high)} ${middle - 4}v8`}
      />
      <circle className="mark-number" cx={at(number)} cy={middle} r={3.2} />
    </svg>
  );
}

/** Says once beside a table how to read the mark. */
export function ExtentLegend(): ReactNode {
  return (
    <p className="row small soft">
      <Extent number={60} low={45} high={75} atLeast={50} atMost={95} full={100} />
      <span>
        <Trans>
          Dot: the number. Whisker: its interval. Pale bar: at least to at most, with the birds that
          were left at a coarser level. Each row has its own scale from 0.
        </Trans>
      </span>
    </p>
  );
}
