import { expect } from 'vitest';

/** Expects a number within a relative tolerance; an expected 0 must be met to `tolerance` itself. */
export function expectRelative(actual: number, expected: number, tolerance: number): void {
  const allowed = tolerance * (expected === 0 ? 1 : Math.abs(expected));
  expect(
    Math.abs(actual - expected) <= allowed,
    `${actual} is not within a relative ${tolerance} of ${expected}`,
  ).toBe(true);
}
