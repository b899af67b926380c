import { describe, expect, it } from 'vitest';
import { geodesicArea, geodesicBetween } from '../../server/core/math/geodesy.js';
import type { Position } from '../../server/core/model/snapshot.js';

/**
 * Test values distributed with GeographicLib (Karney 2013, Algorithms for geodesics, J. Geodesy
 * 87:43–55), recomputed with geographiclib 2.0. Latitude, longitude, azimuth at both ends; metres.
 */
const lines: [
  lat1: number,
  lon1: number,
  azi1: number,
  lat2: number,
  lon2: number,
  azi2: number,
  metres: number,
][] = [
  [
    35.60777, -139.44815, 111.09874842956033, -11.17491, -69.95921, 129.28927088970877,
    8935244.56048183,
  ],
  [
    -21.97856, 142.59065, -32.44456876433189, 41.84138, 98.56635, -41.84359951440466,
    8394328.894657671,
  ],
  [
    -17.42761, 173.34268, -159.03355766119293, -15.84784, 5.93557, -20.78748465153699,
    16076603.163118068,
  ],
  [
    6.96833, 52.74123, 92.58158538631771, -7.39675, 206.17291, 90.72169216592391,
    17102477.249695837,
  ],
  [
    -58.93002, -8.90775, 140.96539790250068, -8.91104, 133.13503, 19.255429433416598,
    11756066.021986462,
  ],
  [
    -10.62672, -32.0898, -86.42671328674776, 5.883, -134.31681, -80.47378097103487,
    11470869.386456301,
  ],
  [
    -19.79938, -174.47484, 71.16727578017154, -11.99349, -154.35109, 65.58909977519923,
    2319004.860116939,
  ],
  [
    -87.85331, 85.66836, -65.12031304024275, 66.48646, 16.09921, -4.888658719272296,
    17286615.314714465,
  ],
  [
    -25.72959, -144.90758, -153.6474686931172, -57.70581, -269.17879, -48.34398315887649,
    9413446.745245311,
  ],
  [
    11.01307, 138.25278, 79.43682622782374, 6.62726, 247.05981, 103.70809021552266,
    11911190.819018409,
  ],
];

/** Perimeter and area: GeographicLib's Planimeter 2.1.2 and geographiclib 2.0 agree. */
const polygons: {
  name: string;
  corners: [lat: number, lon: number][];
  perimeter: number;
  area: number;
}[] = [
  {
    name: 'Antarctica, round the pole (geographiclib documentation, prints 13662703680020.1 m²)',
    corners: [
      [-63.1, -58],
      [-72.9, -74],
      [-71.9, -102],
      [-74.9, -102],
      [-74.3, -131],
      [-77.5, -163],
      [-77.4, 163],
      [-71.7, 172],
      [-65.9, 140],
      [-65.7, 113],
      [-66.6, 88],
      [-66.9, 59],
      [-69.8, 25],
      [-70.0, -4],
      [-71.0, -14],
      [-77.3, -33],
      [-77.9, -46],
      [-74.7, -61],
    ],
    perimeter: 16831067.89279071,
    area: 13662703680020.094,
  },
  {
    name: 'a diamond on the equator (geographiclib test values, Planimeter0)',
    corners: [
      [0, -1],
      [-1, 0],
      [0, 1],
      [1, 0],
    ],
    perimeter: 627598.273165361,
    area: 24619419146.88572,
  },
  {
    name: 'a wetland-sized rectangle (made-up corners, no publication)',
    corners: [
      [53.5, 6.2],
      [53.5, 6.23],
      [53.52, 6.23],
      [53.52, 6.2],
    ],
    perimeter: 8432.440110088324,
    area: 4430249.3972969055,
  },
];

const turn = (a: number, b: number) => {
  const difference = Math.abs(a - b) % 360;
  return Math.min(difference, 360 - difference);
};

describe('geodesicBetween, published values', () => {
  it.each(lines)('from %d %d', (lat1, lon1, azi1, lat2, lon2, azi2, metres) => {
    const answer = geodesicBetween([lon1, lat1], [lon2, lat2]);
    expect(Math.abs(answer.distance - metres)).toBeLessThan(1e-6);
    expect(turn(answer.bearing, azi1)).toBeLessThan(1e-9);
    expect(turn(answer.finalBearing, azi2)).toBeLessThan(1e-9);
    expect(answer.bearing >= 0 && answer.bearing < 360).toBe(true);
  });

  it('JFK to LHR: GeodSolve prints 5551759.400 m (from memory, recomputed with geographiclib)', () => {
    const answer = geodesicBetween([-73.8, 40.6], [-0.5, 51.6]);
    expect(Math.abs(answer.distance - 5551759.4003186785)).toBeLessThan(1e-5);
    expect(turn(answer.bearing, 51.19888284557983)).toBeLessThan(1e-9);
    expect(turn(answer.finalBearing, 107.82177673551426)).toBeLessThan(1e-9);
  });
});

describe('geodesic polygons, published values', () => {
  it.each(polygons)('$name', ({ corners, perimeter, area }) => {
    const ring = [...corners, ...corners.slice(0, 1)].map(([lat, lon]): Position => [lon, lat]);
    const round = ring
      .slice(1)
      .reduce((sum, to, index) => sum + geodesicBetween(ring[index] ?? to, to).distance, 0);
    expect(Math.abs(round / perimeter - 1)).toBeLessThan(1e-9);
    expect(Math.abs(geodesicArea([ring]) / area - 1)).toBeLessThan(1e-9);
    expect(Math.abs(geodesicArea([ring.toReversed()]) / area - 1)).toBeLessThan(1e-9);
  });
});
