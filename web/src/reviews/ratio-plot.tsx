import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { PairPartsFragment } from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { useWidth } from '../ui/use-width.js';
import { birds, listed, twoDecimals } from '../ui/words.js';
import { logScale, ratioTicks, sizeTicks, tickText } from './ratio-scale.js';

const height = 250;
const frame = { left: 38, right: 42, top: 12, bottom: 40 };
/** Groups outside the limits that are named in the picture. */
const MOST_NAMED = 3;
/** Pixels from one label to the next, so that both can be read. */
const LABEL_STEP = 15;

type Point = PairPartsFragment['ratios']['points'][number];

/** Ratios of two observers by the size of the group, with mean and limits and the intervals of these. */
export function RatioPlot(props: {
  readonly pair: PairPartsFragment;
  /** The same for all pairs, so that their pictures can be held against each other. */
  readonly reach: number;
  readonly sizes: { readonly low: number; readonly high: number };
}): ReactNode {
  const { pair, reach, sizes } = props;
  const { points, meanRatio, lower, upper } = pair.ratios;
  const [nameA, nameB] = [pair.a.name, pair.b.name];
  const [box, width] = useWidth(420);
  const [left, right] = [frame.left, width - frame.right];
  const [top, bottom] = [frame.top, height - frame.bottom];
  const scaleY = logScale(1 / reach, reach, bottom, top);
  const x = logScale(sizes.low, sizes.high, left + 8, right - 8);
  const y = (ratio: number): number => Math.min(bottom, Math.max(top, scaleY(ratio)));
  const outside = points.filter(
    ({ ratio }) =>
      lower.value !== null && upper.value !== null && (ratio < lower.value || ratio > upper.value),
  );
  const lines = [
    { className: 'plot-limit', ratio: upper.value },
    { className: 'plot-mean', ratio: meanRatio.value },
    { className: 'plot-limit', ratio: lower.value },
  ].flatMap(({ className, ratio }) => (ratio === null ? [] : [{ className, ratio }]));
  return (
    <div ref={box} className="ratio-plot">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t`Ratios of ${nameA} to ${nameB} by size of the group, drawn; the tables below say the same.`}
      >
        {ratioTicks(reach).map((tick) => (
          <g key={tick}>
            <line
              x1={left}
              x2={right}
              y1={y(tick)}
              y2={y(tick)}
              className={tick === 1 ? 'plot-level' : 'plot-grid'}
            />
            <text x={left - 6} y={y(tick) + 4} textAnchor="end" className="plot-text">
              {tickText(tick)}
            </text>
          </g>
        ))}
        {sizeTicks(sizes.low, sizes.high).map((size) => (
          <g key={size}>
            <line x1={x(size)} x2={x(size)} y1={bottom} y2={bottom + 4} className="plot-axis" />
            <text x={x(size)} y={bottom + 17} textAnchor="middle" className="plot-text">
              {birds(size)}
            </text>
          </g>
        ))}
        <line x1={left} x2={right} y1={bottom} y2={bottom} className="plot-axis" />
        <text x={right} y={height - 6} textAnchor="end" className="plot-text plot-soft">
          <Trans>birds in the group</Trans>
        </text>
        {[lower, upper].map((limit, place) =>
          limit.low === null || limit.high === null ? null : (
            <rect
              key={place}
              x={left}
              width={right - left}
              y={y(limit.high)}
              height={Math.max(1, y(limit.low) - y(limit.high))}
              className="plot-band"
            />
          ),
        )}
        {lines.map(({ className, ratio }) => (
          <line
            key={`${className} ${ratio}`}
            x1={left}
            x2={right}
            y1={y(ratio)}
            y2={y(ratio)}
            className={className}
          />
        ))}
        {spreadOut(lines.map(({ ratio }) => y(ratio) + 4)).map((labelY, place) => (
          <text key={place} x={right + 5} y={labelY} className="plot-text plot-strong">
            {twoDecimals(lines[place]?.ratio ?? 1)}
          </text>
        ))}
        {points.map((point) => (
          <Mark
            key={`${point.cell} ${point.group}`}
            x={x(point.mean)}
            y={y(point.ratio)}
            beyond={Math.abs(Math.log(point.ratio)) > Math.log(reach) ? point.ratio : null}
          />
        ))}
        {farthest(outside).map((point) => (
          <PointName
            key={`${point.cell} ${point.group}`}
            point={point}
            at={[x(point.mean), y(point.ratio)]}
            left={left}
            right={right}
          />
        ))}
      </svg>
    </div>
  );
}

/** A ring; an arrow head where the ratio lies beyond the picture. */
function Mark(props: {
  readonly x: number;
  readonly y: number;
  readonly beyond: number | null;
}): ReactNode {
  const { x, y, beyond } = props;
  if (beyond === null) return <circle cx={x} cy={y} r={4} className="plot-point" />;
  const tip = beyond > 1 ? -7 : 7;
  return <path d={`M${x - 5} ${y}h10l-5 ${tip}Z`} className="plot-point" />;
}

/** The names of a group, at most two of them. */
export function groupWords(taxa: readonly string[]): string {
  const names = taxa.map((taxon) => readTaxon(taxon).common);
  if (names.length <= 2) return listed(names);
  const [first] = names;
  const more = names.length - 1;
  return plural(more, {
    one: `${first} and # more name`,
    other: `${first} and # more names`,
  });
}

function PointName(props: {
  readonly point: Point;
  readonly at: readonly [number, number];
  readonly left: number;
  readonly right: number;
}): ReactNode {
  const [x, y] = props.at;
  const isLeft = x < (props.left + props.right) / 2;
  const name = groupWords(props.point.taxa);
  return (
    <text
      x={isLeft ? x + 8 : x - 8}
      y={y + 4}
      textAnchor={isLeft ? 'start' : 'end'}
      className="plot-text plot-name"
    >
      {name.length > 28 ? `${name.slice(0, 27)}…` : name}
    </text>
  );
}

/** Moves labels apart that lie too close, keeping their order and their middle. */
export function spreadOut(places: readonly number[]): readonly number[] {
  const moved: number[] = [];
  for (const place of places) {
    moved.push(Math.max(place, (moved[moved.length - 1] ?? -Infinity) + LABEL_STEP));
  }
  const shift = moved.reduce((sum, place, index) => sum + place - (places[index] ?? place), 0);
  return moved.map((place) => place - shift / Math.max(1, moved.length));
}

function farthest(points: readonly Point[]): readonly Point[] {
  const off = ({ ratio }: Point): number => Math.abs(Math.log(ratio));
  return [...points].sort((one, other) => off(other) - off(one)).slice(0, MOST_NAMED);
}
