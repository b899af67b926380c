/** How often a straight line may fail to halve the stretch before it is halved. */
const LINES = 3;

/**
 * Where an increasing function reaches a value, down to neighbouring numbers: along the straight line
 * between the two ends (regula falsi, the end that stays counted half: Dowell & Jarratt 1971, BIT
 * 11:168), and by halves where that is no faster.
 *
 * Purpose: quantiles from distribution functions. Sure, without a derivative or a starting value, and
 * the same bits everywhere. A function that rises only from the left of the target gives `high`, one
 * that is already past it gives `low`.
 *
 * @param increasing never falls between low and high; it is not asked at these
 * @param target the value to reach
 * @example invertIncreasing((x) => x * x, 2, 0, 2) // Math.SQRT2
 */
export function invertIncreasing(
  increasing: (x: number) => number,
  target: number,
  low: number,
  high: number,
): number {
  let [below, above] = [low, high];
  // How far the function is from the target there; of the first ends it is not known.
  let [under, over] = [NaN, NaN];
  let moved: 'below' | 'above' | null = null;
  let [lines, stretch] = [0, above - below];
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return middle;
    const crossing = below + ((above - below) * under) / (under - over);
    // Not nearer to an end than that, so that both ends close in.
    const least = 4 * Number.EPSILON * Math.max(Math.abs(below), Math.abs(above));
    const onLine = Math.min(Math.max(crossing, below + least), above - least);
    const useful = lines < LINES && onLine > below && onLine < above;
    lines = useful ? lines + 1 : 0;
    const at = useful ? onLine : middle;
    const off = increasing(at) - target;
    if (off === 0) return at;
    if (off < 0) {
      if (moved === 'below') over /= 2;
      [below, under, moved] = [at, off, 'below'];
    } else {
      if (moved === 'above') under /= 2;
      [above, over, moved] = [at, off, 'above'];
    }
    if (above - below <= stretch / 2) [lines, stretch] = [0, above - below];
  }
}

/**
 * The same from 0 upwards without a known end: the end is doubled until the target is passed.
 *
 * @example invertIncreasingFromZero((x) => x, 1000) // 1000
 */
export function invertIncreasingFromZero(
  increasing: (x: number) => number,
  target: number,
): number {
  let high = 1;
  while (increasing(high) < target && high < Number.MAX_VALUE / 4) high *= 2;
  return invertIncreasing(increasing, target, high === 1 ? 0 : high / 2, high);
}
