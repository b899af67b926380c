import type { ReactNode } from 'react';
import type { Box } from './inner-point.js';
import type { LonLat, Point, Projection } from './projection.js';

/** A flock on the map: a circle for the first sighting of a link, a square for the second. */
export interface MapFlock {
  readonly id: string;
  readonly at: LonLat;
  readonly number: number;
  readonly mark: 'first' | 'second' | 'other';
  /** False: anywhere in its section; it stands in the middle of it. */
  readonly isPlaced: boolean;
  /** Seen at the moment that the map shows; those seen before are drawn fainter. */
  readonly isNow: boolean;
  /** Lines of text beside it; none for most. */
  readonly words: readonly string[];
}

/** A flock that went, or may have gone, from one place to another, or stayed in view of both. */
export interface MapArrow {
  readonly id: string;
  readonly from: LonLat;
  readonly to: LonLat;
  /** 0 to 1: the weight of the line. The words beside it say the same. */
  readonly chance: number;
  readonly isChosen: boolean;
  /** Did not move: a line without a head. */
  readonly isStill: boolean;
  /** Ruled to be two flocks. */
  readonly isRejected: boolean;
  readonly words: string;
}

/** More birds, larger mark: its area grows with the square root of the number, to fit parties and rafts alike. */
function radiusOf({ number, mark }: MapFlock): number {
  const radius = Math.min(13, 2 + 0.9 * Math.max(number, 1) ** 0.35);
  return mark === 'other' ? radius : Math.max(radius, 8);
}

export function boxOfFlock(flock: MapFlock, projection: Projection): Box {
  const [x, y] = projection.project(flock.at);
  const radius = radiusOf(flock);
  return { left: x - radius, right: x + radius, top: y - radius, bottom: y + radius };
}

export function FlockMark(props: {
  readonly flock: MapFlock;
  readonly projection: Projection;
}): ReactNode {
  const { flock } = props;
  const [x, y] = props.projection.project(flock.at);
  const radius = radiusOf(flock);
  const shape = {
    className: `map-flock map-flock-${flock.mark}`,
    'data-now': flock.isNow,
    strokeDasharray: flock.isPlaced ? undefined : '2 2',
  };
  if (flock.mark === 'other') return <circle cx={x} cy={y} r={radius} {...shape} />;
  return (
    <g>
      {flock.mark === 'first' ? (
        <circle cx={x} cy={y} r={radius} {...shape} />
      ) : (
        <rect
          x={x - radius}
          y={y - radius}
          width={2 * radius}
          height={2 * radius}
          rx="1.5"
          {...shape}
        />
      )}
      <text x={x} y={y + 4} textAnchor="middle" className={`map-letter map-letter-${flock.mark}`}>
        {flock.mark === 'first' ? '1' : '2'}
      </text>
    </g>
  );
}

/** Line widths of a link that is hardly likely and of one that is all but certain, in pixels. */
const THINNEST = 1.5;
const THICKEST = 7;

export function widthOf(chance: number): number {
  return THINNEST + chance * (THICKEST - THINNEST);
}

export function ArrowMark(props: {
  readonly arrow: MapArrow;
  readonly projection: Projection;
  readonly onChoose: (() => void) | undefined;
}): ReactNode {
  const { arrow } = props;
  const [x1, y1] = props.projection.project(arrow.from);
  const [x2, y2] = props.projection.project(arrow.to);
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length < 1) return null;
  const width = widthOf(arrow.chance);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const head = arrow.isStill ? 0 : Math.min(length * 0.6, 7 + 1.6 * width);
  // The head ends at the rim of the second mark, if there is room for it.
  const gap = Math.min(9, Math.max(0, length - head - 4));
  const end: Point = [x2 - ux * gap, y2 - uy * gap];
  const neck: Point = [end[0] - ux * head, end[1] - uy * head];
  const half = head * 0.48;
  return (
    <g
      className="map-link"
      data-chosen={arrow.isChosen}
      data-rejected={arrow.isRejected}
      onClick={props.onChoose}
    >
      <line
        x1={x1}
        y1={y1}
        x2={neck[0]}
        y2={neck[1]}
        strokeWidth={width}
        strokeDasharray={arrow.isRejected ? '2 4' : undefined}
      />
      {arrow.isStill ? null : (
        <path
          d={`M${end[0]} ${end[1]}L${neck[0] - uy * half} ${neck[1] + ux * half}L${neck[0] + uy * half} ${neck[1] - ux * half}Z`}
        />
      )}
    </g>
  );
}

/** Small boxes along an arrow, so that labels keep off it. */
export function boxesOfArrow(arrow: MapArrow, projection: Projection): Box[] {
  const [x1, y1] = projection.project(arrow.from);
  const [x2, y2] = projection.project(arrow.to);
  const steps = Math.min(40, Math.max(1, Math.round(Math.hypot(x2 - x1, y2 - y1) / 8)));
  const half = widthOf(arrow.chance) / 2 + 2;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const x = x1 + ((x2 - x1) * step) / steps;
    const y = y1 + ((y2 - y1) * step) / steps;
    return { left: x - half, right: x + half, top: y - half, bottom: y + half };
  });
}
