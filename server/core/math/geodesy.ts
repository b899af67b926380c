import type { Polygon, Position } from '../model/snapshot.js';
import { ECCENTRICITY, ECCENTRICITY2, EQUATOR, FLATTENING } from './ellipsoid.js';
import { integrate } from './gauss-legendre.js';

export const POLAR = EQUATOR * (1 - FLATTENING);
/** Second eccentricity squared. */
export const SECOND_ECCENTRICITY2 = ECCENTRICITY2 / (1 - ECCENTRICITY2);

/** The shortest line over the ellipsoid between two positions. */
export interface Geodesic {
  /** Metres. */
  readonly distance: number;
  /** Degrees clockwise from true north, 0 to under 360, at the start and at the end. */
  readonly bearing: number;
  readonly finalBearing: number;
}

/** A geodesic on the auxiliary sphere: arcs are in radians from where it crosses the equator. */
interface Arc {
  readonly start: number;
  readonly end: number;
  readonly startAzimuth: number;
  readonly endAzimuth: number;
  /** Sine and squared cosine of the azimuth at the equator. */
  readonly sinEquator: number;
  readonly cosEquator2: number;
}

/**
 * Distance in metres and bearings between two positions on WGS 84.
 *
 * The geodesic is mapped onto a sphere by reduced latitude and the longitude there is found by
 * Vincenty's iteration (1975, Survey Review 23:88), with the integrals for longitude and distance
 * (Karney 2013, J. Geodesy 87:43, equations 7 and 8) done by quadrature instead of his series: good
 * to about a nanometre per kilometre. Two equal positions have distance 0 and bearing 0.
 *
 * @throws RangeError for positions almost opposite each other on the globe, where the iteration
 * does not settle. No waterbody is that wide.
 */
export function geodesicBetween(from: Position, to: Position): Geodesic {
  if (from[0] === to[0] && from[1] === to[1]) return { distance: 0, bearing: 0, finalBearing: 0 };
  const arc = arcBetween(from, to);
  const stretch2 = SECOND_ECCENTRICITY2 * arc.cosEquator2;
  const distance =
    POLAR *
    integrate((sigma) => Math.sqrt(1 + stretch2 * Math.sin(sigma) ** 2), arc.start, arc.end);
  return { distance, bearing: compass(arc.startAzimuth), finalBearing: compass(arc.endAzimuth) };
}

/**
 * Area in square metres enclosed by a polygon on WGS 84 whose edges are geodesics, holes taken off.
 * A ring may go round a pole; then the smaller of the two areas is meant. Between the equator and
 * an edge lies ∫ A(latitude) d longitude, where A is the area per radian up to a latitude
 * (Snyder 1987, USGS Professional Paper 1395, equation 3-12).
 */
export function geodesicArea(polygon: Polygon): number {
  const [outside = 0, ...holes] = polygon.map(ringArea);
  return outside - holes.reduce((sum, area) => sum + area, 0);
}

function ringArea(ring: readonly Position[]): number {
  // Measured from the first corner's latitude, not from the equator, so that small rings keep
  // their digits; what lies below it is added for the longitude turned in all (0, or a full turn).
  const base = areaToLatitude(sinOfLatitude(reducedLatitude(ring[0]?.[1] ?? 0)));
  let area = 0;
  let turned = 0;
  ring.forEach((to, index) => {
    const from = ring[index === 0 ? ring.length - 1 : index - 1];
    if (from === undefined || (from[0] === to[0] && from[1] === to[1])) return;
    turned += longitudeDifference(from, to);
    area += areaOver(base, arcBetween(from, to));
  });
  if (Math.abs(turned) < Math.PI) return Math.abs(area);
  return 2 * Math.PI * areaToLatitude(1) - Math.abs(area + base * turned);
}

/** Area between a parallel and a geodesic, over 0 for one that runs east on its north side. */
function areaOver(base: number, arc: Arc): number {
  const cosEquator = Math.sqrt(arc.cosEquator2);
  const stretch2 = SECOND_ECCENTRICITY2 * arc.cosEquator2;
  return integrate(
    (sigma) => {
      const sin = cosEquator * Math.sin(sigma);
      const cos = Math.sqrt(1 - sin ** 2);
      const longitudePerArc =
        arc.sinEquator / cos ** 2 - longitudeLag(arc.sinEquator, stretch2, sigma);
      return (areaToLatitude(sinOfLatitude({ sin, cos })) - base) * longitudePerArc;
    },
    arc.start,
    arc.end,
  );
}

/** Ellipsoid area per radian of longitude from the equator to a latitude, given its sine. */
function areaToLatitude(sinLatitude: number): number {
  return (
    (POLAR ** 2 / 2) *
    (sinLatitude / (1 - ECCENTRICITY2 * sinLatitude ** 2) +
      Math.atanh(ECCENTRICITY * sinLatitude) / ECCENTRICITY)
  );
}

/** How far longitude on the ellipsoid falls behind that on the sphere, per radian of arc. */
export function longitudeLag(sinEquator: number, stretch2: number, sigma: number): number {
  const root = Math.sqrt(1 + stretch2 * Math.sin(sigma) ** 2);
  return (FLATTENING * sinEquator * (2 - FLATTENING)) / (1 + (1 - FLATTENING) * root);
}

function arcBetween(from: Position, to: Position): Arc {
  const start = reducedLatitude(from[1]);
  const end = reducedLatitude(to[1]);
  const difference = longitudeDifference(from, to);
  let onSphere = difference;
  for (let round = 0; round < 200; round += 1) {
    const arc = sphereArc(start, end, onSphere);
    const stretch2 = SECOND_ECCENTRICITY2 * arc.cosEquator2;
    const lag = integrate(
      (sigma) => longitudeLag(arc.sinEquator, stretch2, sigma),
      arc.start,
      arc.end,
    );
    const next = difference + lag;
    if (Math.abs(next) > Math.PI) break;
    if (Math.abs(next - onSphere) < 1e-15) return sphereArc(start, end, next);
    onSphere = next;
  }
  throw new RangeError(
    'geodesicBetween needs positions that are not opposite each other on the globe',
  );
}

interface Reduced {
  readonly sin: number;
  readonly cos: number;
}

/** Solves the spherical triangle of two reduced latitudes and the longitude between them. */
function sphereArc(start: Reduced, end: Reduced, longitude: number): Arc {
  const sinLongitude = Math.sin(longitude);
  const cosLongitude = Math.cos(longitude);
  const east = end.cos * sinLongitude;
  const north = start.cos * end.sin - start.sin * end.cos * cosLongitude;
  const length = Math.atan2(
    Math.hypot(east, north),
    start.sin * end.sin + start.cos * end.cos * cosLongitude,
  );
  const startAzimuth = Math.atan2(east, north);
  const endAzimuth = Math.atan2(
    start.cos * sinLongitude,
    start.cos * end.sin * cosLongitude - start.sin * end.cos,
  );
  const sinEquator = Math.sin(startAzimuth) * start.cos;
  const fromEquator = Math.atan2(start.sin, Math.cos(startAzimuth) * start.cos);
  return {
    start: fromEquator,
    end: fromEquator + length,
    startAzimuth,
    endAzimuth,
    sinEquator,
    cosEquator2: 1 - sinEquator ** 2,
  };
}

export function reducedLatitude(latitude: number): Reduced {
  const sin = (1 - FLATTENING) * Math.sin(radians(latitude));
  const cos = Math.cos(radians(latitude));
  const length = Math.hypot(sin, cos);
  return { sin: sin / length, cos: cos / length };
}

/** Sine of the geographic latitude that belongs to a reduced one. */
function sinOfLatitude({ sin, cos }: Reduced): number {
  return sin / Math.hypot(sin, cos * (1 - FLATTENING));
}

/** Radians, the short way round: over −π to π. */
function longitudeDifference(from: Position, to: Position): number {
  const degrees = (to[0] - from[0]) % 360;
  if (degrees > 180) return radians(degrees - 360);
  return radians(degrees <= -180 ? degrees + 360 : degrees);
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function compass(azimuth: number): number {
  const degrees = (azimuth * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}
