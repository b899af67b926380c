export type CsvCell = string | number | null;

function field(cell: CsvCell): string {
  const text = cell === null ? '' : String(cell);
  return /[",;\t\r\n]|^\s|\s$/u.test(text) ? `"${text.replace(/"/gu, '""')}"` : text;
}

/** A table as CSV (RFC 4180): header row, commas, CRLF only inside fields, rows end in a line feed. */
export function writeCsv(
  columns: readonly string[],
  rows: readonly (readonly CsvCell[])[],
): string {
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\n`).join('');
}
