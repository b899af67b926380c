import type { Polygon, Position } from '../model/snapshot.js';
import { ECCENTRICITY, ECCENTRICITY2, EQUATOR } from './ellipsoid.js';

/** Kilometres east and north of a plane's centre. */
export type Point = readonly [east: number, north: number];

/** Closed rings of points; the first is the outside. */
export type Figure = readonly (readonly Point[])[];

/**
 * A map on which areas are true: Lambert's azimuthal equal-area projection of WGS 84 about a centre
 * (Snyder 1987, USGS Professional Paper 1395, equations 24-17 to 24-20 and 3-11, 3-12). Within 50 km
 * of the centre lengths and directions on it differ from those on the ellipsoid by under 1 in 10,000,
 * and areas, since an edge is straight here and a geodesic there; within 5 km both by under 1 in 500,000.
 * Longitudes are taken the short way round from the centre, so a waterbody on the antimeridian is in
 * one piece whether its positions are written as 179.9 and −179.9 or 179.9 and 180.1.
 */
export class LocalPlane {
  readonly #longitude: number;
  readonly #beta: { readonly sin: number; readonly cos: number };
  readonly #radius: number;
  readonly #stretch: number;

  /** @param centre not within a degree of a pole */
  constructor(centre: Position) {
    if (!(Math.abs(centre[1]) <= 89)) {
      throw new RangeError(`A local plane needs a centre from 89° S to 89° N, not ${centre[1]}°`);
    }
    this.#longitude = centre[0];
    const sin = Math.sin(radians(centre[1]));
    this.#radius = EQUATOR * Math.sqrt(POLE / 2);
    this.#beta = authalic(centre[1]);
    const parallel = Math.cos(radians(centre[1])) / Math.sqrt(1 - ECCENTRICITY2 * sin ** 2);
    this.#stretch = (EQUATOR * parallel) / (this.#radius * this.#beta.cos);
  }

  /** @throws RangeError for the point opposite the centre, which has no place on the map. */
  pointOf([lon, lat]: Position): Point {
    const { sin, cos } = authalic(lat);
    const turned = radians(shortWay(lon - this.#longitude));
    const { sin: sin0, cos: cos0 } = this.#beta;
    const facing = 1 + sin0 * sin + cos0 * cos * Math.cos(turned);
    if (facing < 1e-12) throw new RangeError('A local plane cannot show the far side of the globe');
    const scale = this.#radius * Math.sqrt(2 / facing);
    const east = scale * this.#stretch * cos * Math.sin(turned);
    const north = (scale / this.#stretch) * (cos0 * sin - sin0 * cos * Math.cos(turned));
    return [east / 1000, north / 1000];
  }

  figureOf(polygon: Polygon): Figure {
    return polygon.map((ring) => ring.map((position) => this.pointOf(position)));
  }
}

/** The middle of what some positions span, the short way round from the first. */
export function middleOf(positions: readonly Position[]): Position {
  const [first] = positions;
  if (first === undefined) return [0, 0];
  const east = positions.map(([lon]) => shortWay(lon - first[0]));
  const north = positions.map(([, lat]) => lat);
  const half = (values: readonly number[]): number =>
    (Math.min(...values) + Math.max(...values)) / 2;
  return [first[0] + half(east), half(north)];
}

/** Area between the equator and a latitude, over that of a zone of the unit sphere: Snyder's q. */
function zone(sin: number): number {
  return (
    (1 - ECCENTRICITY2) *
    (sin / (1 - ECCENTRICITY2 * sin ** 2) + Math.atanh(ECCENTRICITY * sin) / ECCENTRICITY)
  );
}

const POLE = zone(1);

/** Sine and cosine of the authalic latitude. */
function authalic(latitude: number): { readonly sin: number; readonly cos: number } {
  const sin = zone(Math.sin(radians(latitude))) / POLE;
  return { sin, cos: Math.sqrt(Math.max(0, 1 - sin ** 2)) };
}

/** A difference of longitudes as −180 to 180. */
function shortWay(degrees: number): number {
  return degrees - 360 * Math.round(degrees / 360);
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
