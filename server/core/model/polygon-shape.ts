import type { Position } from './snapshot.js';

/** Twice the signed area of the triangle a, b, c: which side of the line a–b the point c is on. */
function side(a: Position, b: Position, c: Position): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

function between(a: Position, b: Position, point: Position): boolean {
  return (
    Math.min(a[0], b[0]) <= point[0] &&
    point[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= point[1] &&
    point[1] <= Math.max(a[1], b[1])
  );
}

/** Whether two segments share a point (orientation test; Cormen et al., Introduction to Algorithms, 33.1). */
function segmentsTouch(a: Position, b: Position, c: Position, d: Position): boolean {
  const sides = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)] as const;
  if (sides[0] * sides[1] < 0 && sides[2] * sides[3] < 0) return true;
  return (
    (sides[0] === 0 && between(a, b, c)) ||
    (sides[1] === 0 && between(a, b, d)) ||
    (sides[2] === 0 && between(c, d, a)) ||
    (sides[3] === 0 && between(c, d, b))
  );
}

export function isClosed(ring: readonly Position[]): boolean {
  const [first, last] = [ring[0], ring.at(-1)];
  return first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1];
}

/**
 * A ring with its longitudes the short way round from its first position, so that one on the
 * antimeridian is in one piece whether it is written as 179.9 and −179.9 or as 179.9 and 180.1.
 */
export function inOnePiece(ring: readonly Position[]): readonly Position[] {
  const start = ring[0]?.[0] ?? 0;
  return ring.map(([lon, lat]): Position => {
    const turns = Math.round((lon - start) / 360);
    return turns === 0 ? [lon, lat] : [lon - 360 * turns, lat];
  });
}

/** Whether all positions lie on one line, so that nothing is enclosed. */
export function isFlat(ring: readonly Position[]): boolean {
  const [first] = ring;
  const other = ring.find(([lon, lat]) => lon !== first?.[0] || lat !== first[1]);
  if (first === undefined || other === undefined) return true;
  return ring.every((position) => side(first, other, position) === 0);
}

/**
 * Where a closed ring touches or crosses itself anywhere but where neighbouring sides meet; `null` if
 * it does not. A ring that runs back on itself does so too; a position written twice in a row does no
 * harm.
 */
export function selfCrossing(ring: readonly Position[]): Position | null {
  const sides = ring
    .slice(1)
    .map((end, index) => [ring[index] ?? end, end] as const)
    .filter(([start, end]) => start[0] !== end[0] || start[1] !== end[1]);
  for (const [first, [a, b]] of sides.entries()) {
    for (let second = first + 1; second < sides.length; second += 1) {
      const other = sides[second];
      if (other === undefined) continue;
      const [c, d] = other;
      const isNext = second === first + 1;
      const isLast = first === 0 && second === sides.length - 1;
      if (isNext || isLast) {
        // Neighbours meet in one corner; they overlap if an outer end lies on the other side.
        const [corner, before, after] = isNext ? [b, a, d] : [a, b, c];
        const folds = side(before, corner, after) === 0;
        if (folds && (between(before, corner, after) || between(corner, after, before)))
          return corner;
      } else if (segmentsTouch(a, b, c, d)) return meetingOf(a, b, c, d);
    }
  }
  return null;
}

/** The point that two segments share; where they run along each other, an end that lies on both. */
function meetingOf(a: Position, b: Position, c: Position, d: Position): Position {
  const [lon, lat] = [b[0] - a[0], b[1] - a[1]];
  const turn = lon * (d[1] - c[1]) - lat * (d[0] - c[0]);
  if (turn === 0) return [c, d].find((end) => between(a, b, end)) ?? a;
  const along = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / turn;
  return [a[0] + along * lon, a[1] + along * lat];
}
