import type { FieldSheet, SheetRow } from './field-sheet.js';
import { BOLD, HAIRLINE, MARGIN, PLAIN, SheetPages, TEXT } from './sheet-pages.js';
import type { SheetWords } from './words/sheet-words.js';

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
  pages.heading(sheet.words.birds);
  pages.y += pages.paragraph(sheet.words.keys, MARGIN, pages.y, pages.width) + 4;
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
  const { scans, words } = sheet;
  if (pages.y + scansHeight(pages, sheet) - GAP > pages.bottom) pages.nextPage();
  pages.heading(words.rafts);
  pages.y += pages.paragraph(words.raftsIntro, MARGIN, pages.y, pages.width) + 6;
  for (let raft = 1; raft <= scans.rafts; raft += 1) {
    drawScan(pages, sheet, raft);
    pages.y += GAP;
  }
}

/** What the scan samples take of a page, with the space above them. */
function scansHeight(pages: SheetPages, { scans, words }: FieldSheet): number {
  const head = GAP + HEADING + pages.heightOf(words.raftsIntro, pages.width) + 6;
  return head + scans.rafts * (TOTAL_LINE + HEADING + scans.rows * ROW + GAP);
}

function drawScan(pages: SheetPages, { scans, words }: FieldSheet, raft: number): void {
  const { samples, rows } = scans;
  const top = pages.y;
  drawScanHead(pages, words, raft);
  const gridTop = top + TOTAL_LINE;
  const nameWidth = 150;
  const cell = (pages.width - nameWidth) / samples;
  const height = HEADING + rows * ROW;
  pages.text(words.identification, MARGIN + 3, gridTop + 4, { size: 9, font: BOLD });
  for (let sample = 0; sample < samples; sample += 1) {
    const x = MARGIN + nameWidth + sample * cell;
    pages.line(x, gridTop, x, gridTop + height, HAIRLINE);
    pages.text(words.sample(sample + 1), x + 3, gridTop + 4, { size: 9, font: BOLD });
  }
  for (let row = 0; row < rows; row += 1) {
    const y = gridTop + HEADING + row * ROW;
    pages.line(MARGIN, y, MARGIN + pages.width, y, HAIRLINE);
  }
  pages.frame(MARGIN, gridTop, pages.width, height, EDGE);
  pages.y = gridTop + height;
}

/** Which raft, and labels with lines to write on behind them; the lines share what the words leave. */
function drawScanHead(pages: SheetPages, words: SheetWords, raft: number): void {
  const title = words.raft(raft);
  pages.text(title, MARGIN, pages.y + 2, { size: TEXT, font: BOLD });
  const titleWidth = pages.widthOf(title, TEXT, BOLD) + GAP;
  const fields = [
    { label: words.flockLabel, share: 4 },
    { label: words.birdsInAll, share: 3 },
    { label: words.countedBy, share: 2 },
  ].map((field) => ({ ...field, width: pages.widthOf(field.label, 9, PLAIN) + 4 }));
  const taken = fields.reduce((sum, { width }) => sum + width + GAP, titleWidth - GAP);
  const shares = fields.reduce((sum, { share }) => sum + share, 0);
  let x = MARGIN + titleWidth;
  for (const { label, share, width } of fields) {
    const end = x + width + ((pages.width - taken) * share) / shares;
    pages.text(label, x, pages.y + 3, { size: 9 });
    pages.line(x + width, pages.y + 13, end, pages.y + 13, HAIRLINE);
    x = end + GAP;
  }
}
