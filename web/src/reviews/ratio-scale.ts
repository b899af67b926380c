import { decimals } from '../ui/words.js';

/** Beyond this factor marks stand at the edge of the picture, as an arrow. */
const FARTHEST = 10;
/** Closer than this, rounding to whole birds would look like a difference. */
const NEAREST = 1.25;

/** The factor that a scale of ratios reaches to either side of level, so that all of them are on it. */
export function reachOf(ratios: readonly (number | null)[]): number {
  const factors = ratios
    .filter((ratio) => ratio !== null && ratio > 0 && Number.isFinite(ratio))
    .map((ratio) => Math.max(ratio ?? 1, 1 / (ratio ?? 1)));
  return Math.min(FARTHEST, Math.max(NEAREST, ...factors) * 1.05);
}

/** Ratios to name on a scale of that reach, smallest first: level in the middle. */
export function ratioTicks(reach: number): readonly number[] {
  const above = stepsFor(reach).filter((step) => step <= reach);
  return [...[...above].reverse().map((step) => 1 / step), 1, ...above];
}

function stepsFor(reach: number): readonly number[] {
  if (reach < 1.6) return [1.1, 1.25, 1.5];
  if (reach < 3.2) return [1.25, 1.5, 2, 3];
  return [2, 5, 10];
}

/** `0.8`, `1`, `1.25`: no more decimals than it takes, two at most. */
export function tickText(value: number): string {
  return decimals(value, 0, 2);
}

/** 1, 10, 100, … and what lies half way between where there are few of them. */
export function sizeTicks(low: number, high: number): readonly number[] {
  const powers = [0, 1, 2, 3, 4, 5, 6].map((power) => 10 ** power);
  const within = powers.filter((size) => size >= low && size <= high);
  if (within.length > 2) return within;
  return powers.flatMap((size) => [size, 3 * size]).filter((size) => size >= low && size <= high);
}

/** A place on a logarithmic axis from pixel `start` (for `low`) to `end` (for `high`). */
export function logScale(
  low: number,
  high: number,
  start: number,
  end: number,
): (value: number) => number {
  const span = Math.log(high / low);
  return (value) => start + (Math.log(value / low) / span) * (end - start);
}
