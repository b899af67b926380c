import type { Point } from './projection.js';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** So many points each way are tried. */
const STEPS = 14;

/**
 * The point of a polygon that is farthest from its sides and from those of the picture, of a grid of
 * points: where a name has most room. `null` if nothing of it is in the picture.
 *
 * @param rings in pixels, each closed; holes by the even-odd rule.
 */
export function innerPoint(rings: readonly (readonly Point[])[], box: Box): Point | null {
  const corners = rings.flat();
  const left = Math.max(box.left, Math.min(...corners.map(([x]) => x)));
  const right = Math.min(box.right, Math.max(...corners.map(([x]) => x)));
  const top = Math.max(box.top, Math.min(...corners.map(([, y]) => y)));
  const bottom = Math.min(box.bottom, Math.max(...corners.map(([, y]) => y)));
  if (!(left < right && top < bottom)) return null;
  let best: Point | null = null;
  let mostRoom = 0;
  for (let row = 0; row < STEPS; row += 1) {
    for (let column = 0; column < STEPS; column += 1) {
      const point: Point = [
        left + ((column + 0.5) / STEPS) * (right - left),
        top + ((row + 0.5) / STEPS) * (bottom - top),
      ];
      const room = roomAt(point, rings, box);
      if (room > mostRoom) {
        mostRoom = room;
        best = point;
      }
    }
  }
  return best;
}

/** How far the nearest side is; 0 outside. */
function roomAt([x, y]: Point, rings: readonly (readonly Point[])[], box: Box): number {
  let isInside = false;
  let room = Math.min(x - box.left, box.right - x, y - box.top, box.bottom - y);
  for (const ring of rings) {
    for (let index = 0; index + 1 < ring.length; index += 1) {
      const [x1, y1] = ring[index] ?? [0, 0];
      const [x2, y2] = ring[index + 1] ?? [0, 0];
      if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) isInside = !isInside;
      const [dx, dy] = [x2 - x1, y2 - y1];
      const length = dx * dx + dy * dy;
      const along = length === 0 ? 0 : ((x - x1) * dx + (y - y1) * dy) / length;
      const part = Math.min(1, Math.max(0, along));
      room = Math.min(room, Math.hypot(x - x1 - part * dx, y - y1 - part * dy));
    }
  }
  return isInside ? room : 0;
}
