import { once } from '../once.js';

/** Points on the half interval; the rule has twice as many and is exact to degree 4 · HALF − 1. */
const HALF = 10;

/** Nodes over 0 and weights of the 2 · HALF-point rule on [−1, 1]. */
const rule = once(() => legendreRule(2 * HALF));

/**
 * Integral of a smooth function over an interval by the 20-point Gauss–Legendre rule: exact for
 * polynomials to degree 39, so good to rounding for functions without sharp bends in the interval.
 * (Davis & Rabinowitz 1984, *Methods of Numerical Integration*, section 2.7.)
 */
export function integrate(f: (x: number) => number, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let sum = 0;
  for (const { node, weight } of rule()) {
    sum += weight * (f(middle - half * node) + f(middle + half * node));
  }
  return sum * half;
}

/** Roots of the Legendre polynomial by Newton's method from their well-known cosine estimates. */
function legendreRule(points: number): { node: number; weight: number }[] {
  return Array.from({ length: points / 2 }, (_, index) => {
    let node = Math.cos((Math.PI * (index + 0.75)) / (points + 0.5));
    for (let round = 0; round < 10; round += 1) {
      const { value, slope } = legendre(points, node);
      node -= value / slope;
    }
    const { slope } = legendre(points, node);
    return { node, weight: 2 / ((1 - node * node) * slope * slope) };
  });
}

function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k += 1) {
    [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  }
  return { value, slope: (degree * (before - x * value)) / (1 - x * x) };
}
