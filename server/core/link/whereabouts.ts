import { areaOfFigure, depthInside, overlapArea } from '../math/figure-overlap.js';
import { LocalPlane, middleOf, type Figure, type Point } from '../math/local-plane.js';
import type { Position, Section, Snapshot, Tally } from '../model/snapshot.js';
import {
  addVariance,
  meanError,
  positionError,
  roundError,
  type Variance,
} from './position-error.js';

/** Where a flock may have been: one stated place, or points spread over what its observer could see. */
export interface Whereabouts {
  readonly points: readonly Point[];
  /** Of every point. */
  readonly variance: Variance;
  readonly stated: boolean;
}

/** Kilometres and degrees from one point to another. */
export interface Leg {
  readonly east: number;
  readonly north: number;
  readonly kilometres: number;
  readonly bearing: number;
}

/** Where a tally was made: what is asked about a flock without a position. */
export type Ground = Pick<Tally, 'sections' | 'vantage'>;

/** A range of kilometres east and north. */
export interface Box {
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

/** Kilometres by which a place is hardly misjudged. */
const MARGIN = 0.3;

/** The waterbody's sections and views on a local map, with what is asked of them often kept. */
export class Waterbody {
  readonly #plane: LocalPlane;
  readonly #names: ReadonlyMap<string, string>;
  readonly #sections: ReadonlyMap<string, Figure>;
  readonly #stands: ReadonlyMap<string, Point>;
  readonly #views: ReadonlyMap<string, readonly Figure[]>;
  readonly #kept = new Map<string, unknown>();
  readonly #grounds = new Map<string, number>();

  constructor({ sections, vantages, views }: Snapshot) {
    const corners = sections.flatMap(({ polygon }) => polygon.flat());
    const plane = new LocalPlane(middleOf(corners));
    this.#plane = plane;
    this.#names = new Map(sections.map(({ id, name }: Section) => [id, name]));
    this.#sections = new Map(sections.map(({ id, polygon }) => [id, plane.figureOf(polygon)]));
    this.#stands = new Map(vantages.map(({ id, position }) => [id, plane.pointOf(position)]));
    const byVantage = new Map<string, Figure[]>();
    for (const { vantage, polygon } of views) {
      byVantage.set(vantage, [...(byVantage.get(vantage) ?? []), plane.figureOf(polygon)]);
    }
    this.#views = byVantage;
  }

  /** A section's name, or its id where it is not drawn. */
  nameOf(section: string): string {
    return this.#names.get(section) ?? section;
  }

  /** Square kilometres of some sections together; of all where none are named. */
  areaOf(sections: readonly string[] = [...this.#sections.keys()]): number {
    return this.#keep(`area ${sections.join('+')}`, () => {
      const area = this.#figuresOf(sections).reduce((sum, each) => sum + areaOfFigure(each), 0);
      // Sections without extent would make every place certain: take a hectare at least.
      return Math.max(area, 0.01);
    });
  }

  /** Square kilometres that two vantage points' views have in common; `null` if one is not drawn. */
  overlapOf(one: string, other: string): number | null {
    const [a, b] = [this.#views.get(one), this.#views.get(other)];
    if (a === undefined || b === undefined) return null;
    return this.#keep(`overlap ${one} ${other}`, () =>
      a.reduce((sum, view) => b.reduce((more, each) => more + overlapArea(view, each), sum), 0),
    );
  }

  /** A number for every ground, the same for equal ones: to keep what was worked out for it. */
  numberOf(ground: Ground): number {
    const key = keyOf(ground);
    const number = this.#grounds.get(key) ?? this.#grounds.size;
    this.#grounds.set(key, number);
    return number;
  }

  /** Whereabouts of a flock: the position given, or anywhere in its sections that was in view. */
  whereabouts(position: Position | null, ground: Ground): Whereabouts {
    if (position !== null) {
      const point = this.#plane.pointOf(position);
      return { points: [point], variance: this.errorAt(point, ground), stated: true };
    }
    return this.#keep(`spread ${keyOf(ground)}`, () => {
      const points = thinned(this.pointsOf(ground), MOST_POINTS);
      // Each point stands for its share of the area: half the side of a square of that size.
      const share = this.areaOf(ground.sections) / Math.max(1, points.length);
      return { points, variance: roundError(Math.sqrt(share) / 2), stated: false };
    });
  }

  /** Error of a place as judged from where a tally was made. */
  errorAt(point: Point, { vantage }: Pick<Tally, 'vantage'>): Variance {
    return positionError(point, this.#stands.get(vantage ?? '') ?? null);
  }

  /** Every way from a point of the one to a point of the other. */
  legs(from: Whereabouts, to: Whereabouts): readonly Leg[] {
    return from.points.flatMap((start) => to.points.map((end) => legBetween(start, end)));
  }

  /**
   * Chance that birds at a place are taken to be in a tally's sections: how far inside they lie,
   * against the errors of the place and of the observer's judgement; 0 if its observer cannot see there.
   */
  chanceInside(point: Point, variance: Variance, ground: Ground): number {
    const figures = this.#figuresOf(ground.sections);
    if (figures.length === 0 || this.isInView(point, meanError(variance), ground) === false) {
      return 0;
    }
    const depth = Math.max(...figures.map((figure) => depthInside(point, figure)));
    const error = meanError(addVariance(variance, this.errorAt(point, ground)));
    return nearlyNormal(depth / error);
  }

  /**
   * Whether birds at a place, known to within an error in km, may be in view from where a tally was
   * made; `null` where it is not said where its observer stood, or no view is drawn from there.
   */
  isInView(point: Point, error: number, { vantage }: Pick<Tally, 'vantage'>): boolean | null {
    const views = vantage === null ? undefined : this.#views.get(vantage);
    if (views === undefined) return null;
    return views.some((view) => depthInside(point, view) >= -error);
  }

  /** What holds a ground's sections and views, and a margin for misjudged places. */
  reachOf(ground: Ground): Box | null {
    return this.#keep(`box ${keyOf(ground)}`, () => {
      const views = ground.vantage === null ? [] : (this.#views.get(ground.vantage) ?? []);
      const corners = [...this.#figuresOf(ground.sections), ...views].flat(2);
      if (corners.length === 0) return null;
      const [easts, norths] = [corners.map(([east]) => east), corners.map(([, north]) => north)];
      return {
        west: Math.min(...easts) - MARGIN,
        east: Math.max(...easts) + MARGIN,
        south: Math.min(...norths) - MARGIN,
        north: Math.max(...norths) + MARGIN,
      };
    });
  }

  /** Which of some sections a position lies in. */
  sectionsAt(position: Position, sections: readonly string[]): string[] {
    const point = this.#plane.pointOf(position);
    return sections.filter((id) =>
      this.#figuresOf([id]).some((figure) => depthInside(point, figure) >= 0),
    );
  }

  #figuresOf(sections: readonly string[]): readonly Figure[] {
    return sections.map((id) => this.#sections.get(id)).filter((figure) => figure !== undefined);
  }

  /** An even grid over a tally's sections, but for what its observer could not see of them. */
  pointsOf(ground: Ground): readonly Point[] {
    return this.#keep(`grid ${keyOf(ground)}`, () => {
      const all = this.#figuresOf(ground.sections).flatMap(gridOver);
      const seen = all.filter((point) => this.isInView(point, 0, ground) !== false);
      // A view that misses its own section altogether is drawn wrong: it says nothing.
      return seen.length > 0 ? seen : all;
    });
  }

  #keep<Value>(key: string, work: () => Value): Value {
    if (!this.#kept.has(key)) this.#kept.set(key, work());
    return this.#kept.get(key) as Value;
  }
}

/** The normal distribution function to within 0.01, by a logistic (Haley 1952; from memory): fast. */
function nearlyNormal(z: number): number {
  return 1 / (1 + Math.exp(-1.702 * z));
}

/** Whether birds at one place may be tallied from both grounds: their sections or views come near. */
export function mayMeet(one: Box | null, other: Box | null): boolean {
  if (one === null || other === null) return true;
  return (
    one.west <= other.east &&
    other.west <= one.east &&
    one.south <= other.north &&
    other.south <= one.north
  );
}

function keyOf({ sections, vantage }: Ground): string {
  return JSON.stringify([sections, vantage]);
}

function legBetween(start: Point, end: Point): Leg {
  const [east, north] = [end[0] - start[0], end[1] - start[1]];
  const bearing = (Math.atan2(east, north) * 180) / Math.PI;
  return {
    east,
    north,
    kilometres: Math.hypot(east, north),
    bearing: bearing < 0 ? bearing + 360 : bearing,
  };
}

/** Points that stand for a place: few for ways between places, many for shares of them. */
const MOST_POINTS = 9;
const FEWEST_IN_GRID = 4;
const GRID = 24;

/** Points of an even grid that lie inside, the grid as fine as it takes. */
function gridOver(figure: Figure): Point[] {
  const corners = figure[0] ?? [];
  const easts = corners.map(([east]) => east);
  const norths = corners.map(([, north]) => north);
  const [west, south] = [Math.min(...easts), Math.min(...norths)];
  const [width, height] = [Math.max(...easts) - west, Math.max(...norths) - south];
  for (let cells = GRID; cells <= 8 * GRID; cells *= 2) {
    const inside: Point[] = [];
    for (let row = 0; row < cells; row += 1) {
      for (let column = 0; column < cells; column += 1) {
        const point: Point = [
          west + (width * (column + 0.5)) / cells,
          south + (height * (row + 0.5)) / cells,
        ];
        if (depthInside(point, figure) >= 0) inside.push(point);
      }
    }
    if (inside.length >= FEWEST_IN_GRID) return inside;
  }
  return corners.slice(0, FEWEST_IN_GRID);
}

/** Some of the points, spread evenly over the list: by rows, then by columns. */
function thinned(points: readonly Point[], most: number): Point[] {
  const kept = Math.min(most, points.length);
  return Array.from(
    { length: kept },
    (_, index) => points[Math.floor(((index + 0.5) * points.length) / kept)],
  ).filter((point) => point !== undefined);
}
