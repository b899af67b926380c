import type { Position } from '../model/snapshot.js';
import { FLATTENING } from './ellipsoid.js';
import { integrate } from './gauss-legendre.js';
import { longitudeLag, POLAR, radians, reducedLatitude, SECOND_ECCENTRICITY2 } from './geodesy.js';

/** Half the way round the globe, about: farther, a geodesic is not the shortest line. */
const FARTHEST = 20_000_000;

/**
 * Where one arrives who goes so many metres from a position in a direction, along a geodesic of
 * WGS 84: the direct problem, the other way round from `geodesicBetween`.
 *
 * On the auxiliary sphere the azimuth at the start gives the geodesic's crossing of the equator, and
 * Newton's method the arc whose length is the distance (Karney 2013, J. Geodesy 87:43, section 2,
 * equations 7 to 12); his series are done by quadrature, as in `geodesicBetween`.
 *
 * @param bearing degrees clockwise from true north
 * @param distance metres, from 0 to 20,000 km
 * @returns longitude from −180 to under 180
 * @throws RangeError for a distance below 0, beyond 20,000 km, or not a number
 * @example geodesicFrom([0, 0], 90, 0) // [0, 0]
 */
export function geodesicFrom(from: Position, bearing: number, distance: number): Position {
  if (!(distance >= 0 && distance <= FARTHEST)) {
    throw new RangeError(`geodesicFrom needs a distance from 0 to ${FARTHEST} m, not ${distance}`);
  }
  const azimuth = radians(bearing);
  const start = reducedLatitude(from[1]);
  const sinEquator = Math.sin(azimuth) * start.cos;
  const cosEquator = Math.hypot(Math.cos(azimuth), Math.sin(azimuth) * start.sin);
  const stretch2 = SECOND_ECCENTRICITY2 * cosEquator ** 2;
  const first = Math.atan2(start.sin, Math.cos(azimuth) * start.cos);
  const stretch = (sigma: number): number => Math.sqrt(1 + stretch2 * Math.sin(sigma) ** 2);
  let last = first + distance / POLAR;
  for (let round = 0; round < 20; round += 1) {
    const step = (integrate(stretch, first, last) - distance / POLAR) / stretch(last);
    last -= step;
    if (Math.abs(step) < 1e-16) break;
  }
  // Turned on the sphere; less than that on the ellipsoid.
  const onSphere = Math.atan2(
    sinEquator * Math.sin(last - first),
    Math.cos(first) * Math.cos(last) + sinEquator ** 2 * Math.sin(first) * Math.sin(last),
  );
  const lag = integrate((sigma) => longitudeLag(sinEquator, stretch2, sigma), first, last);
  const sin = cosEquator * Math.sin(last);
  const cos = Math.hypot(cosEquator * Math.cos(last), sinEquator);
  return [
    halfOpen(from[0] + degrees(onSphere - lag)),
    degrees(Math.atan2(sin, cos * (1 - FLATTENING))),
  ];
}

function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}

/** A longitude as −180 to under 180. */
function halfOpen(longitude: number): number {
  return longitude - 360 * Math.floor((longitude + 180) / 360);
}
