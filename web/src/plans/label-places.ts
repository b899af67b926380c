import type { Box } from './inner-point.js';
import type { Point } from './projection.js';

/** Text that belongs to a point of a picture. */
export interface Label {
  readonly key: string;
  readonly lines: readonly string[];
  readonly at: Point;
  /** How far from the point it keeps; 0 lets it stand upon the point. */
  readonly clear: number;
  /** Its place is to the left of the point rather than to the right. */
  readonly isLeftFirst?: boolean;
  /** Left out where it would cover something; all others are drawn in any case. */
  readonly isOptional?: boolean;
}

export interface PlacedLabel {
  readonly key: string;
  readonly lines: readonly string[];
  /** Middle of the first line's baseline. */
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

export const LINE_HEIGHT = 15;
/** Of the map's text, in pixels a letter: text cannot be measured before it is drawn. */
const LETTER = 6.9;

/** Words over words cannot be read, words over a mark can: how much worse the one is. */
const OVER_WORDS = 20;

/** Directions from the point, in the order of preference. */
const AROUND: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
];

/**
 * Places labels one after another, each at the first place beside its point where it is inside the
 * picture and covers neither an earlier label nor an obstacle. If there is none, where it covers
 * least, or nowhere if it is optional. So the most important come first.
 *
 * @param obstacles what must stay visible: marks of the picture.
 * @param words other text of the picture, which must stay readable.
 */
export function placeLabels(
  labels: readonly Label[],
  frame: Box,
  obstacles: readonly Box[],
  words: readonly Box[] = [],
): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const label of labels) {
    const choices = placesFor(label).map((box) => {
      const kept = moveInto(box, frame);
      const moved = Math.abs(kept.left - box.left) + Math.abs(kept.top - box.top);
      const covered = covers(kept, obstacles);
      const overWords = covers(kept, [...words, ...placed.map((other) => other.box)]);
      return { box: kept, cost: covered + OVER_WORDS * overWords + (moved > 0 ? 1 + moved : 0) };
    });
    const best = choices.reduce((one, other) => (other.cost < one.cost ? other : one));
    if (label.isOptional === true && best.cost > 0) continue;
    placed.push({
      key: label.key,
      lines: label.lines,
      x: (best.box.left + best.box.right) / 2,
      y: best.box.top + LINE_HEIGHT - 3,
      box: best.box,
    });
  }
  return placed;
}

function covers(box: Box, others: readonly Box[]): number {
  return others.reduce((sum, other) => sum + overlap(box, other), 0);
}

function placesFor({
  lines,
  at: [x, y],
  clear,
  isLeftFirst = false,
}: Label): readonly [Box, ...Box[]] {
  const width = Math.max(...lines.map((line) => line.length)) * LETTER + 4;
  const height = lines.length * LINE_HEIGHT + 2;
  const boxAt = (middle: number, centre: number): Box => ({
    left: middle - width / 2,
    right: middle + width / 2,
    top: centre - height / 2,
    bottom: centre + height / 2,
  });
  const side = isLeftFirst ? -1 : 1;
  const beside = (reach: number): Box[] =>
    AROUND.map(([across, down]) =>
      boxAt(x + side * across * (reach + width / 2), y + down * (reach + height / 2)),
    );
  const near = clear === 0 ? [boxAt(x, y)] : [];
  const reaches = [0, 1, 2].map((further) => clear + further * LINE_HEIGHT);
  const [first, ...rest] = [...near, ...reaches.flatMap(beside)];
  return [first ?? boxAt(x, y), ...rest];
}

function moveInto(box: Box, frame: Box): Box {
  const across = Math.max(frame.left - box.left, Math.min(0, frame.right - box.right));
  const down = Math.max(frame.top - box.top, Math.min(0, frame.bottom - box.bottom));
  return {
    left: box.left + across,
    right: box.right + across,
    top: box.top + down,
    bottom: box.bottom + down,
  };
}

/** Square pixels that two boxes share. */
export function overlap(one: Box, other: Box): number {
  const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  return across > 0 && down > 0 ? across * down : 0;
}
