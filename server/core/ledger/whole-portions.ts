import { keyOf } from '../taxa/candidate-set.js';
import type { Portion } from '../consensus/composition.js';

export interface WholePortion {
  readonly portion: Portion;
  /** Whole birds, over 0. */
  readonly number: number;
}

/**
 * Portions in whole birds, by largest remainder within each compiled identification, so that no
 * tally line gives more birds than it counted. With two observers whose pairing is unique they are
 * whole already and come back as they are.
 */
export function wholePortions(portions: readonly Portion[]): WholePortion[] {
  const given = new Map<string, number>();
  const keysOf = (portion: Portion): { key: string; birds: number }[] =>
    portion.sides.map((side) => ({
      // By lines, not by observer: looks that join the same tally hold the same birds.
      key: side.lines.join('+'),
      birds: side.birds,
    }));
  const give = (portion: Portion, number: number): void => {
    for (const { key } of keysOf(portion)) given.set(key, (given.get(key) ?? 0) + number);
  };
  const canGive = (portion: Portion): boolean =>
    keysOf(portion).every(({ key, birds }) => (given.get(key) ?? 0) < birds);

  const whole = portions.map((portion) => Math.floor(portion.number + 1e-6));
  const wanted = new Map<string, number>();
  portions.forEach((portion, index) => {
    give(portion, whole[index] ?? 0);
    const key = keyOf(portion.candidates);
    wanted.set(key, (wanted.get(key) ?? 0) + portion.number);
  });
  for (const [key, birds] of wanted) wanted.set(key, Math.round(birds));
  portions.forEach((portion, index) => {
    const key = keyOf(portion.candidates);
    wanted.set(key, (wanted.get(key) ?? 0) - (whole[index] ?? 0));
  });
  const order = portions
    .map((portion, index) => ({
      portion,
      index,
      remainder: Math.round((portion.number - (whole[index] ?? 0)) * 1e6),
    }))
    .filter(({ remainder }) => remainder > 0)
    .sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  for (const { portion, index } of order) {
    const key = keyOf(portion.candidates);
    const left = wanted.get(key) ?? 0;
    if (left <= 0 || !canGive(portion)) continue;
    whole[index] = (whole[index] ?? 0) + 1;
    wanted.set(key, left - 1);
    give(portion, 1);
  }
  return portions
    .map((portion, index) => ({ portion, number: whole[index] ?? 0 }))
    .filter(({ number }) => number > 0);
}
