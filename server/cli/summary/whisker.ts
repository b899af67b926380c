/** Columns on each side of level, which stands for a factor of `REACH`. */
const SIDE = 20;
const REACH = 2;

/**
 * A ratio with its limits as a line of text on a logarithmic scale, level (1) in the middle:
 * `·····├──●──┤··|·····`. What lies beyond a factor of two ends in an arrow.
 *
 * @param value `null` draws an empty scale
 */
export function whisker(value: number | null, low: number | null, high: number | null): string {
  const cells = Array.from({ length: 2 * SIDE + 1 }, (_, column): string =>
    column === SIDE ? '|' : '·',
  );
  const columnOf = (ratio: number): number =>
    SIDE + Math.round((SIDE * Math.log(ratio)) / Math.log(REACH));
  const put = (column: number, mark: string, beyond: [string, string] = [mark, mark]): void => {
    const last = cells.length - 1;
    const [place, drawn] =
      column < 0 ? [0, beyond[0]] : column > last ? [last, beyond[1]] : [column, mark];
    cells[place] = drawn;
  };
  if (value === null) return cells.join('');
  if (low !== null && high !== null) {
    const [from, to] = [columnOf(low), columnOf(high)];
    for (let column = Math.max(0, from); column <= Math.min(2 * SIDE, to); column += 1) {
      cells[column] = '─';
    }
    put(from, '├', ['←', '→']);
    put(to, '┤', ['←', '→']);
  }
  put(columnOf(value), '●', ['←', '→']);
  return cells.join('');
}

/** What the scale of `whisker` says, to stand above it. */
export const WHISKER_SCALE = `½${' '.repeat(SIDE - 1)}1${' '.repeat(SIDE - 1)}2`;
