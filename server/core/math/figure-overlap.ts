import type { Figure, Point } from './local-plane.js';

type Edge = readonly [west: Point, east: Point];

/**
 * Area that two figures have in common, in squared units of their coordinates. Between two
 * neighbouring abscissae of corners and crossings no edges cross, so each such strip is cut by the
 * edges into trapezoids, and those inside both figures (even–odd rule, holes and all) are added up.
 * Figures may touch, share edges, lie in one another or wind either way. One that crosses itself is
 * read by the even–odd rule; a count's own polygons are refused before if they do.
 */
export function overlapArea(a: Figure, b: Figure): number {
  const edges = [edgesOf(a), edgesOf(b)] as const;
  const all = [...edges[0], ...edges[1]];
  const cuts = cutsOf(all);
  let area = 0;
  cuts.forEach((east, index) => {
    const west = cuts[index - 1];
    if (west !== undefined) area += stripArea(edges, west, east);
  });
  return area;
}

/** Area of a figure by the even–odd rule. */
export function areaOfFigure(figure: Figure): number {
  return overlapArea(figure, figure);
}

/** Edges from west to east; upright ones bound no strip. */
function edgesOf(figure: Figure): Edge[] {
  return figure.flatMap((ring) =>
    ring.flatMap((end, index): Edge[] => {
      const start = ring[index === 0 ? ring.length - 1 : index - 1];
      if (start === undefined || start[0] === end[0]) return [];
      return [start[0] < end[0] ? [start, end] : [end, start]];
    }),
  );
}

/** Where edges begin, end and cross, ascending, each once. */
function cutsOf(edges: readonly Edge[]): number[] {
  const cuts = edges.flatMap(([west, east]) => [west[0], east[0]]);
  edges.forEach((one, index) => {
    for (const other of edges.slice(index + 1)) {
      const from = Math.max(one[0][0], other[0][0]);
      const to = Math.min(one[1][0], other[1][0]);
      if (from >= to) continue;
      const before = heightAt(one, from) - heightAt(other, from);
      const after = heightAt(one, to) - heightAt(other, to);
      if (before * after < 0) cuts.push(from + ((to - from) * before) / (before - after));
    }
  });
  return [...new Set(cuts)].toSorted((x, y) => x - y);
}

function stripArea(
  [a, b]: readonly [readonly Edge[], readonly Edge[]],
  west: number,
  east: number,
): number {
  const middle = (west + east) / 2;
  const across = (edges: readonly Edge[], of: 'a' | 'b') =>
    edges
      .filter(([from, to]) => from[0] <= west && to[0] >= east)
      .map((edge) => ({ height: heightAt(edge, middle), of }));
  const crossed = [...across(a, 'a'), ...across(b, 'b')].toSorted(
    (one, other) => one.height - other.height,
  );
  const inside = { a: false, b: false };
  let height = 0;
  crossed.forEach((edge, index) => {
    const below = crossed[index - 1];
    if (below !== undefined && inside.a && inside.b) height += edge.height - below.height;
    inside[edge.of] = !inside[edge.of];
  });
  return height * (east - west);
}

function heightAt([west, east]: Edge, at: number): number {
  return west[1] + ((east[1] - west[1]) * (at - west[0])) / (east[0] - west[0]);
}

/**
 * How far a point lies inside a figure: its distance to the nearest edge, below 0 if it is outside.
 */
export function depthInside(point: Point, figure: Figure): number {
  let [nearest, inside] = [Infinity, false];
  for (const ring of figure) {
    ring.forEach((end, index) => {
      const start = ring[index === 0 ? ring.length - 1 : index - 1] ?? end;
      nearest = Math.min(nearest, squaredDistanceToEdge(point, start, end));
      if (start[1] > point[1] === end[1] > point[1]) return;
      const crossing =
        start[0] + ((point[1] - start[1]) * (end[0] - start[0])) / (end[1] - start[1]);
      if (point[0] < crossing) inside = !inside;
    });
  }
  return inside ? Math.sqrt(nearest) : 0 - Math.sqrt(nearest);
}

function squaredDistanceToEdge(point: Point, start: Point, end: Point): number {
  const [east, north] = [end[0] - start[0], end[1] - start[1]];
  const length2 = east ** 2 + north ** 2;
  const along = ((point[0] - start[0]) * east + (point[1] - start[1]) * north) / (length2 || 1);
  const part = Math.min(1, Math.max(0, along));
  return (point[0] - start[0] - part * east) ** 2 + (point[1] - start[1] - part * north) ** 2;
}
