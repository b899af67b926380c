import { describe, expect, it } from 'vitest';
import { BEAUFORT, SEA_STATES } from '../../../server/core/model/conditions.js';

describe('the Beaufort scale', () => {
  it('has the lower limits in knots that are printed everywhere', () => {
    // National weather services' tables of the scale agree on these.
    const knots = '0 1 4 7 11 17 22 28 34 41 48 56 64'.split(' ').map(Number);
    expect(BEAUFORT.map(({ fromKnots }) => fromKnots)).toEqual(knots);
  });

  it('has the mean speed of each force within its limits', () => {
    // 0.836 · force^1.5 m/s (Simpson's formula, the basis of the WMO's table; from memory); a knot
    // is 1852/3600 m/s (The International System of Units, 9th edition, table 8).
    BEAUFORT.slice(0, -1).forEach(({ fromKnots, toKnots }, force) => {
      const knots = (0.836 * force ** 1.5 * 3600) / 1852;
      expect(knots).toBeGreaterThan(fromKnots - 0.5);
      expect(knots).toBeLessThan((toKnots ?? 0) + 0.5);
    });
  });

  it('leaves no speed out', () => {
    BEAUFORT.forEach(({ toKnots }, force) => {
      const next = BEAUFORT[force + 1];
      expect(toKnots).toBe(next === undefined ? null : next.fromKnots - 1);
    });
  });
});

it('the state of the sea has the heights of WMO code table 3700', () => {
  // As printed in the table: 0, 0–0.1, 0.1–0.5, 0.5–1.25, 1.25–2.5, 2.5–4, 4–6, 6–9, 9–14, over 14 m.
  const heights = '0 0.1 0.5 1.25 2.5 4 6 9 14'.split(' ').map(Number);
  expect(SEA_STATES.map(({ toMetres }) => toMetres)).toEqual([...heights, null]);
});
