import type { FieldSheet, SheetRow } from './field-sheet.js';
import { BOLD, HAIRLINE, MARGIN, PLAIN, SheetPages, TEXT } from './sheet-pages.js';

const ROW = 19;
const HEADING = 16;
const EDGE = 1;
const GAP = 10;
/** Above a raft's grid, where its total is written. */
const TOTAL_LINE = 20;

/** The rows to write birds in, over as many pages as they take, and more where there is room left. */
export function drawGrid(pages: SheetPages, sheet: FieldSheet): void {
  const empty: SheetRow = { code: '', name: '' };
  const rows = [...sheet.rows, ...Array.from({ length: sheet.blankRows }, () => empty)];
  pages.heading('Birds');
  pages.y += pages.paragraph(sheet.keys, MARGIN, pages.y, pages.width) + 4;
  let left = rows;
  while (left.length > 0) {
    const fit = Math.floor((pages.bottom - pages.y - HEADING) / ROW);
    if (fit < 1) {
      pages.nextPage();
      continue;
    }
    // What is left of the last page is for more rows: all of it, or what the scan samples do not need.
    const withScans = Math.floor(
      (pages.bottom - scansHeight(pages, sheet) - pages.y - HEADING) / ROW,
    );
    const filled = left.length <= withScans ? withScans : fit;
    drawRows(
      pages,
      sheet,
      Array.from({ length: filled }, (_, at) => left[at] ?? empty),
    );
    left = left.slice(filled);
    if (left.length > 0) pages.nextPage();
  }
  pages.y += GAP;
}

function drawRows(pages: SheetPages, { columns }: FieldSheet, rows: readonly SheetRow[]): void {
  const all = columns.reduce((sum, { share }) => sum + share, 0);
  const top = pages.y;
  const height = HEADING + rows.length * ROW;
  let x = MARGIN;
  columns.forEach(({ name, share }, at) => {
    if (at > 0) pages.line(x, top, x, top + height, HAIRLINE);
    const width = (pages.width * share) / all;
    pages.text(name, x + 3, top + 4, { size: 9, font: BOLD, width: width - 4 });
    x += width;
  });
  const codeWidth = (pages.width * (columns[0]?.share ?? 0)) / all;
  const nameWidth = (pages.width * (columns[1]?.share ?? 0)) / all;
  rows.forEach(({ code, name }, at) => {
    const y = top + HEADING + at * ROW;
    pages.line(MARGIN, y, MARGIN + pages.width, y, HAIRLINE);
    if (code !== '') pages.text(code, MARGIN + 3, y + 6, { size: 9, width: codeWidth - 4 });
    if (name !== '') {
      const size = pages.widthOf(name, TEXT, PLAIN) > nameWidth - 6 ? 9 : TEXT;
      pages.text(name, MARGIN + codeWidth + 3, y + 5, { size, width: nameWidth - 4 });
    }
  });
  pages.frame(MARGIN, top, pages.width, height, EDGE);
  pages.y = top + height;
}

/** Blocks for scan samples: a raft's total above, identifications down, samples across. */
export function drawScans(pages: SheetPages, sheet: FieldSheet): void {
  const { scans } = sheet;
  if (pages.y + scansHeight(pages, sheet) - GAP > pages.bottom) pages.nextPage();
  pages.heading('Mixed rafts: scan samples');
  pages.y += pages.paragraph(scans.intro, MARGIN, pages.y, pages.width) + 6;
  for (let raft = 1; raft <= scans.rafts; raft += 1) {
    drawScan(pages, scans, raft);
    pages.y += GAP;
  }
}

/** What the scan samples take of a page, with the space above them. */
function scansHeight(pages: SheetPages, { scans }: FieldSheet): number {
  const head = GAP + HEADING + pages.heightOf(scans.intro, pages.width) + 6;
  return head + scans.rafts * (TOTAL_LINE + HEADING + scans.rows * ROW + GAP);
}

function drawScan(pages: SheetPages, { samples, rows }: FieldSheet['scans'], raft: number): void {
  const top = pages.y;
  pages.text(`Raft ${raft}`, MARGIN, top + 2, { size: TEXT, font: BOLD });
  writing(pages, 'Flock label', MARGIN + 50, top, 90);
  writing(pages, 'Birds in all', MARGIN + 205, top, 70);
  writing(pages, 'Counted by (1, B, G)', MARGIN + 340, top, 60);
  const gridTop = top + TOTAL_LINE;
  const nameWidth = 170;
  const cell = (pages.width - nameWidth) / samples;
  const height = HEADING + rows * ROW;
  pages.text('Species, pair or group', MARGIN + 3, gridTop + 4, { size: 9, font: BOLD });
  for (let sample = 0; sample < samples; sample += 1) {
    const x = MARGIN + nameWidth + sample * cell;
    pages.line(x, gridTop, x, gridTop + height, HAIRLINE);
    pages.text(`Sample ${sample + 1}`, x + 3, gridTop + 4, { size: 9, font: BOLD });
  }
  for (let row = 0; row < rows; row += 1) {
    const y = gridTop + HEADING + row * ROW;
    pages.line(MARGIN, y, MARGIN + pages.width, y, HAIRLINE);
  }
  pages.frame(MARGIN, gridTop, pages.width, height, EDGE);
  pages.y = gridTop + height;
}

/** A label with a line to write on behind it. */
function writing(pages: SheetPages, label: string, x: number, y: number, space: number): void {
  pages.text(label, x, y + 3, { size: 9 });
  const from = x + pages.widthOf(label, 9, PLAIN) + 4;
  pages.line(from, y + 13, from + space, y + 13, HAIRLINE);
}
