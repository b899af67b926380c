/** Width that fits a terminal and a printed page. */
const WIDTH = 96;

/** How a terminal may set words off; leaves them alone where output is not a terminal. */
export interface Style {
  readonly heading: (text: string) => string;
}

/** Breaks a text into lines of at most `width`, between words. */
function broken(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line === '') line = word;
    else if (line.length + 1 + word.length <= width) line = `${line} ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/**
 * A text as lines of at most `WIDTH`.
 *
 * @param prefix stands before the first line, and keeps its place free before the others.
 */
export function wrap(text: string, prefix = ''): readonly string[] {
  return broken(text, WIDTH - prefix.length).map((line, index) =>
    index === 0 ? `${prefix}${line}` : `${' '.repeat(prefix.length)}${line}`,
  );
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** Longer cells go on in a line of their own, broken after a space or slash. */
  readonly most?: number;
}

function cellLines(cell: string, most = Infinity): readonly string[] {
  // Breaking after a slash as well: names of pairs have no spaces around it.
  const parts = broken(cell.replaceAll('/', '/ '), most);
  return cell.length <= most ? [cell] : parts.map((part) => part.replaceAll('/ ', '/'));
}

/**
 * Columns lined up, titles first, two spaces apart.
 *
 * @param ruled rows that come after a line, as a total does.
 */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  ruled: readonly (readonly string[])[] = [],
): readonly string[] {
  const laidOut = (row: readonly string[]): readonly (readonly string[])[] => {
    const cells = columns.map(({ most }, at) => cellLines(row[at] ?? '', most));
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) => cells.map((cell) => cell[line] ?? ''));
  };
  const titles = laidOut(columns.map(({ title }) => title));
  const body = rows.flatMap(laidOut);
  const foot = ruled.flatMap(laidOut);
  const widths = columns.map((_, at) =>
    Math.max(...[...titles, ...body, ...foot].map((row) => (row[at] ?? '').length)),
  );
  const written = (row: readonly string[]): string =>
    columns
      .map(({ align }, at) =>
        align === 'left'
          ? (row[at] ?? '').padEnd(widths[at] ?? 0)
          : (row[at] ?? '').padStart(widths[at] ?? 0),
      )
      .join('  ')
      .trimEnd();
  const rule = '─'.repeat(widths.reduce((sum, width) => sum + width, 2 * (columns.length - 1)));
  return [
    ...titles.map(written),
    rule,
    ...body.map(written),
    ...(foot.length > 0 ? [rule] : []),
    ...foot.map(written),
  ];
}
