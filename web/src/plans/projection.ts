/** A position on the page, from the upper left corner. */
export type Point = readonly [x: number, y: number];
/** Degrees, as in RFC 7946. */
export type LonLat = readonly number[];

export interface Projection {
  readonly project: (position: LonLat) => Point;
  /** Where on the ground a point of the picture is: longitude from −180 to under 180, and latitude. */
  readonly unproject: (point: Point) => readonly [lon: number, lat: number];
  readonly width: number;
  readonly height: number;
  readonly pixelsPerKilometre: number;
}

/** A degree of a great circle of the mean sphere, of 6371.0088 km (Moritz 2000, GRS 80). */
const KILOMETRES_PER_DEGREE = (6371.0088 * Math.PI) / 180;

/**
 * A plate carrée with its standard parallel at the waterbody's middle latitude: over a lake's extent
 * shapes and directions come out true to well under a line's width. North is up.
 *
 * @param positions everything that must be in the picture, lon and lat in degrees.
 * @param width in pixels; the height follows, up to `mostHeight`.
 * @param leastKilometres the picture shows at least this much each way, however near the positions.
 */
export function fitProjection(
  positions: readonly LonLat[],
  width: number,
  mostHeight: number,
  { margin = 16, leastKilometres = 0 } = {},
): Projection {
  if (positions.length === 0) {
    const nowhere = (): readonly [number, number] => [0, 0];
    return { project: nowhere, unproject: nowhere, width, height: 0, pixelsPerKilometre: 0 };
  }
  // Across the antimeridian the short way, however longitudes are written there.
  const start = positions[0]?.[0] ?? 0;
  const lons = positions.map(([lon]) => start + shortWay((lon ?? 0) - start));
  const lats = positions.map(([, lat]) => lat ?? 0);
  const [west, east] = [Math.min(...lons), Math.max(...lons)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  const [middleLon, middleLat] = [(west + east) / 2, (south + north) / 2];
  const narrowing = Math.cos(middleLat * (Math.PI / 180));
  const least = Math.max(leastKilometres / KILOMETRES_PER_DEGREE, 1e-9);
  const across = Math.max((east - west) * narrowing, least);
  const down = Math.max(north - south, least);
  const scale = Math.min((width - 2 * margin) / across, (mostHeight - 2 * margin) / down);
  const height = down * scale + 2 * margin;
  return {
    project: ([lon, lat]) => [
      width / 2 + shortWay((lon ?? 0) - middleLon) * narrowing * scale,
      height / 2 - ((lat ?? 0) - middleLat) * scale,
    ],
    unproject: ([x, y]) => {
      const lon = middleLon + (x - width / 2) / (narrowing * scale);
      return [lon - 360 * Math.floor((lon + 180) / 360), middleLat - (y - height / 2) / scale];
    },
    width,
    height,
    pixelsPerKilometre: scale / KILOMETRES_PER_DEGREE,
  };
}

/** A difference of longitudes as −180 to 180. */
function shortWay(degrees: number): number {
  return degrees - 360 * Math.round(degrees / 360);
}

/** Distance over an extent as short as a lake's, on the mean sphere: to about half a per cent. */
export function kilometresBetween(
  [lon1 = 0, lat1 = 0]: LonLat,
  [lon2 = 0, lat2 = 0]: LonLat,
): number {
  const narrowing = Math.cos(((lat1 + lat2) / 2) * (Math.PI / 180));
  return Math.hypot(shortWay(lon2 - lon1) * narrowing, lat2 - lat1) * KILOMETRES_PER_DEGREE;
}

/** The SVG path of lines that are not closed. */
export function linePath(lines: readonly (readonly LonLat[])[], projection: Projection): string {
  return lines.map((line) => `M${pointsOf(line, projection).join('L')}`).join('');
}

/** The SVG path of a polygon's rings; holes come out by the even-odd rule. */
export function polygonPath(rings: readonly (readonly LonLat[])[], projection: Projection): string {
  return rings.map((ring) => `M${pointsOf(ring, projection).join('L')}Z`).join('');
}

function pointsOf(positions: readonly LonLat[], { project }: Projection): string[] {
  return positions.map((position) => {
    const [x, y] = project(position);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  });
}
