import type { Ring } from './lake-emberlow-files.js';

/** Plane geometry for checking a map a few kilometres across; textbook methods, no projection. */

/** Twice the signed area by the shoelace formula: positive = counter-clockwise. */
export function signedArea(ring: Ring): number {
  let twice = 0;
  for (let i = 1; i < ring.length; i += 1) {
    const [ax, ay] = ring[i - 1] ?? [0, 0];
    const [bx, by] = ring[i] ?? [0, 0];
    twice += ax * by - bx * ay;
  }
  return twice / 2;
}

/** Even-odd rule. */
export function contains(ring: Ring, [x, y]: readonly [number, number]): boolean {
  let inside = false;
  for (let i = 1; i < ring.length; i += 1) {
    const [ax, ay] = ring[i - 1] ?? [0, 0];
    const [bx, by] = ring[i] ?? [0, 0];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

type Point = readonly [number, number];

function turn(a: Point, b: Point, c: Point): number {
  return Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
}

/** Pairs of sides that properly cross. */
export function crossings(ring: Ring): number {
  let found = 0;
  for (let i = 1; i < ring.length; i += 1) {
    for (let j = i + 2; j < ring.length; j += 1) {
      const [a, b, c, d] = [ring[i - 1], ring[i], ring[j - 1], ring[j]];
      if (!a || !b || !c || !d) continue;
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) found += 1;
    }
  }
  return found;
}

/** Sides that two rings have in common, in whichever direction. */
export function sharedSides(one: Ring, other: Ring): number {
  const sides = (ring: Ring): string[] =>
    ring.slice(1).map((point, i) => [String(ring[i]), String(point)].sort().join(' '));
  const own = new Set(sides(one));
  return sides(other).filter((side) => own.has(side)).length;
}

/** Kilometres, equirectangular: good to a part in a thousand over a lake. */
export function kilometres(a: Point, b: Point): number {
  const perDegree = 111.2;
  const x = (a[0] - b[0]) * Math.cos((((a[1] + b[1]) / 2) * Math.PI) / 180);
  return Math.hypot(x, a[1] - b[1]) * perDegree;
}

/** Square kilometres that two rings have in common, from a grid of about 100 m. */
export function commonArea(one: Ring, other: Ring): number {
  const longitudes = one.map(([x]) => x);
  const latitudes = one.map(([, y]) => y);
  const step = 0.001;
  let cells = 0;
  for (let x = Math.min(...longitudes); x < Math.max(...longitudes); x += step) {
    for (let y = Math.min(...latitudes); y < Math.max(...latitudes); y += step) {
      if (contains(one, [x, y]) && contains(other, [x, y])) cells += 1;
    }
  }
  const [, latitude] = one[0] ?? [0, 0];
  return cells * (step * 111.2) ** 2 * Math.cos((latitude * Math.PI) / 180);
}
