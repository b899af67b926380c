import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { StatisticPartsFragment } from '../graphql/generated/graphql.js';
import { useWidth } from '../ui/use-width.js';

export type MarkShape = 'dot' | 'square' | 'diamond';

export interface IntervalRow {
  readonly key: string;
  readonly label: string;
  readonly shape?: MarkShape;
  readonly statistic: StatisticPartsFragment;
  /** What stands at the right: the number in words. */
  readonly text: string;
}

export interface IntervalGroup {
  readonly key: string;
  /** Above its rows; without one the rows stand alone. */
  readonly title: string | null;
  readonly rows: readonly IntervalRow[];
}

export interface IntervalScale {
  readonly low: number;
  readonly high: number;
  /** Position from 0 (low) to 1 (high). */
  readonly at: (value: number) => number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
  /** Lines that marks are held against, such as level. */
  readonly lines?: readonly number[];
}

const rowHeight = 26;
const titleHeight = 28;
const narrow = 560;

/** Numbers as marks with their intervals as whiskers, a row each, all on one scale. */
export function IntervalRows(props: {
  /** What the drawing shows; the table says the same in numbers. */
  readonly label: string;
  readonly groups: readonly IntervalGroup[];
  readonly scale: IntervalScale;
}): ReactNode {
  const { label, groups, scale } = props;
  const [box, width] = useWidth(720);
  const isNarrow = width < narrow;
  const labels = groups.flatMap(({ rows }) => rows.map((row) => row.label.length));
  const texts = groups.flatMap(({ rows }) => rows.map(({ text }) => text.length));
  const labelWidth = isNarrow ? 0 : Math.min(width * 0.36, Math.max(...labels, 8) * 7.2 + 12);
  const textWidth = isNarrow ? 0 : Math.max(...texts, 4) * 7 + 14;
  // Half of a number below the scale stands beyond its end.
  const edge = isNarrow ? 18 : 10;
  const [left, right] = [labelWidth + edge, width - textWidth - edge];
  const places = placesOf(groups, isNarrow ? rowHeight + 18 : rowHeight);
  const height = places.height + 24;
  const x = (value: number): number => left + scale.at(value) * (right - left);
  return (
    <div ref={box} className="interval-rows">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t`${label}, drawn; the table below says the same.`}
      >
        {scale.ticks.map(({ value, text }) => (
          <g key={value}>
            <line x1={x(value)} x2={x(value)} y1={0} y2={places.height} className="plot-grid" />
            <text x={x(value)} y={height - 6} textAnchor="middle" className="plot-text">
              {text}
            </text>
          </g>
        ))}
        {(scale.lines ?? []).map((value) => (
          <line
            key={value}
            x1={x(value)}
            x2={x(value)}
            y1={0}
            y2={places.height}
            className="plot-level"
          />
        ))}
        {places.titles.map(({ title, y }) => (
          <text key={y} x={0} y={y} className="plot-text plot-strong plot-name">
            {title}
          </text>
        ))}
        {places.rows.map(({ row, y }) => (
          <g key={row.key}>
            <text x={0} y={isNarrow ? y - 14 : y + 4} className="plot-text plot-name">
              {row.label}
            </text>
            <text
              x={width}
              y={isNarrow ? y - 14 : y + 4}
              textAnchor="end"
              className="plot-text plot-name"
            >
              {row.text}
            </text>
            <RowMark row={row} y={y} x={x} scale={scale} />
          </g>
        ))}
      </svg>
    </div>
  );
}

function RowMark(props: {
  readonly row: IntervalRow;
  readonly y: number;
  readonly x: (value: number) => number;
  readonly scale: IntervalScale;
}): ReactNode {
  const { row, y, x, scale } = props;
  const { value, low, high } = row.statistic;
  if (value === null) return null;
  const inside = (number: number): number => Math.min(scale.high, Math.max(scale.low, number));
  const [from, to] = [x(inside(low ?? value)), x(inside(high ?? scale.high))];
  const hasInterval = low !== null;
  const ends = [
    low !== null && low >= scale.low ? `M${from} ${y - 5}v10` : `M${from + 6} ${y - 5}l-6 5l6 5`,
    high !== null && high <= scale.high ? `M${to} ${y - 5}v10` : `M${to - 6} ${y - 5}l6 5l-6 5`,
  ];
  return (
    <>
      {hasInterval ? (
        <path className="mark-interval" d={`M${from} ${y}H${to}${ends.join('')}`} />
      ) : null}
      <Shape shape={row.shape ?? 'dot'} x={x(inside(value))} y={y} />
    </>
  );
}

/** The mark alone: also for a legend. */
export function Shape(props: {
  readonly shape: MarkShape;
  readonly x: number;
  readonly y: number;
}): ReactNode {
  const { shape, x, y } = props;
  switch (shape) {
    case 'dot':
      return <circle className="mark-number" cx={x} cy={y} r={4.5} />;
    case 'square':
      return <rect className="mark-hollow" x={x - 4} y={y - 4} width={8} height={8} />;
    case 'diamond':
      return <path className="mark-hollow" d={`M${x} ${y - 6}l6 6l-6 6l-6 -6Z`} />;
  }
}

function placesOf(
  groups: readonly IntervalGroup[],
  step: number,
): {
  readonly titles: readonly { readonly title: string; readonly y: number }[];
  readonly rows: readonly { readonly row: IntervalRow; readonly y: number }[];
  readonly height: number;
} {
  const titles: { title: string; y: number }[] = [];
  const rows: { row: IntervalRow; y: number }[] = [];
  let top = 4;
  for (const group of groups) {
    if (group.title !== null) {
      titles.push({ title: group.title, y: top + 16 });
      top += titleHeight;
    }
    for (const row of group.rows) {
      rows.push({ row, y: top + step - rowHeight / 2 });
      top += step;
    }
    top += group.title === null ? 0 : 6;
  }
  return { titles, rows, height: top + 4 };
}

/** 0 to 1 in even steps, written as shares or as numbers. */
export function evenScale(write: (value: number) => string): IntervalScale {
  return {
    low: 0,
    high: 1,
    at: (value) => value,
    ticks: [0, 0.25, 0.5, 0.75, 1].map((value) => ({ value, text: write(value) })),
  };
}
