import { LocalPlane, middleOf, type Figure, type Point } from '../core/math/local-plane.js';
import type { Section, VantagePoint } from '../core/model/snapshot.js';

/** The sections of an assignment on a plane, in kilometres east and north of their middle. */
export interface SectionMap {
  readonly sections: readonly { readonly name: string; readonly figure: Figure }[];
  readonly vantage: { readonly name: string; readonly point: Point } | null;
  /** South-west and north-east corner of all that is on it. */
  readonly from: Point;
  readonly to: Point;
  /** Kilometres that the scale bar stands for: 1, 2 or 5 times a power of ten. */
  readonly scaleBar: number;
}

/** Share of the map's width that the scale bar takes at most. */
const LONGEST_BAR = 0.4;

/** A small map of an assignment: its sections' own polygons, and where to stand. */
export function sectionMap(sections: readonly Section[], vantage: VantagePoint | null): SectionMap {
  const positions = [
    ...sections.flatMap(({ polygon }) => polygon.flat()),
    ...(vantage === null ? [] : [vantage.position]),
  ];
  const plane = new LocalPlane(middleOf(positions));
  const points = positions.map((position) => plane.pointOf(position));
  const east = points.map(([x]) => x);
  const north = points.map(([, y]) => y);
  const [from, to]: [Point, Point] = [
    [Math.min(...east), Math.min(...north)],
    [Math.max(...east), Math.max(...north)],
  ];
  return {
    sections: sections.map(({ name, polygon }) => ({ name, figure: plane.figureOf(polygon) })),
    vantage:
      vantage === null ? null : { name: vantage.name, point: plane.pointOf(vantage.position) },
    from,
    to,
    scaleBar: roundBelow(Math.max(to[0] - from[0], to[1] - from[1], 1e-3) * LONGEST_BAR),
  };
}

/** The largest of 1, 2 and 5 times a power of ten that is not above a length. */
export function roundBelow(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length));
  const step = [5, 2, 1].find((each) => each * power <= length) ?? 1;
  return step * power;
}
