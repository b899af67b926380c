import PDFDocument from 'pdfkit';
import { drawGrid, drawScans } from './draw-grid.js';
import { drawSectionMap } from './draw-map.js';
import type { FieldSheet, SheetField } from './field-sheet.js';
import { BOLD, HAIRLINE, MARGIN, PLAIN, SheetPages, TEXT } from './sheet-pages.js';

/** Points, as PDF has them: ISO 216 A4 in 1/72 inch, and North American letter. */
export const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;
export type Paper = keyof typeof PAPERS;

const MAP_SIZE = 132;
const LABEL = 9;
const FIELD_HEIGHT = 27;

/**
 * Draws a field sheet in black on white: lines of half a point or more, text of nine points or more.
 * The same sheet gives the same bytes: its day stands for the time of making.
 *
 * @returns the whole PDF
 */
export function drawFieldSheet(sheet: FieldSheet, paper: Paper): Promise<Buffer> {
  const document = new PDFDocument({
    size: [...PAPERS[paper]],
    margin: MARGIN,
    bufferPages: true,
    lang: sheet.language,
    displayTitle: true,
    info: {
      Title: sheet.words.fileTitle(sheet.foot),
      CreationDate: new Date(`${sheet.date}T00:00:00Z`),
      Producer: 'Countersign',
      Creator: 'Countersign',
    },
  });
  const parts: Buffer[] = [];
  const whole = new Promise<Buffer>((resolve, reject) => {
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', () => resolve(Buffer.concat(parts)));
    document.on('error', reject);
  });
  const pages = new SheetPages(document);
  drawHead(pages, sheet);
  drawCautions(pages, sheet);
  pages.heading(sheet.words.effortAndConditions);
  drawFields(pages, sheet.effort, MARGIN, pages.width);
  drawGrid(pages, sheet);
  drawScans(pages, sheet);
  pages.writeFeet(sheet.foot, sheet.words.pageOf);
  document.end();
  return whole;
}

function drawHead(pages: SheetPages, sheet: FieldSheet): void {
  const top = pages.y;
  pages.text(sheet.words.title, MARGIN, top, { size: 16, font: BOLD });
  pages.y = top + 24;
  drawFields(pages, sheet.head, MARGIN, pages.width - MAP_SIZE - 12);
  const bottom = pages.y;
  drawSectionMap(pages, sheet.map, MARGIN + pages.width - MAP_SIZE, top, MAP_SIZE);
  pages.y = Math.max(bottom, top + MAP_SIZE) + 6;
}

function drawCautions(pages: SheetPages, { cautions, lastWord, words }: FieldSheet): void {
  pages.heading(words.beforeYouGo);
  for (const caution of cautions) {
    pages.y += pages.paragraph(`•  ${caution}`, MARGIN, pages.y, pages.width) + 1;
  }
  pages.y += pages.paragraph(lastWord, MARGIN, pages.y, pages.width, BOLD) + 4;
}

/** Fields in rows of twelve twelfths: a small label, and what stands there or a line to write on. */
function drawFields(
  pages: SheetPages,
  fields: readonly SheetField[],
  left: number,
  width: number,
): void {
  let used = 0;
  for (const field of fields) {
    if (used + field.twelfths > 12) {
      pages.y += FIELD_HEIGHT;
      used = 0;
    }
    drawField(pages, field, left + (width * used) / 12, (width * field.twelfths) / 12 - 8);
    used += field.twelfths;
  }
  pages.y += FIELD_HEIGHT + 2;
}

function drawField(pages: SheetPages, field: SheetField, left: number, width: number): void {
  const { label, value, choices = [], unit } = field;
  const top = pages.y;
  const base = top + FIELD_HEIGHT - 4;
  pages.text(label, left, top, { size: LABEL, width });
  if (value !== '') {
    pages.text(value, left, top + 11, { size: TEXT, font: BOLD, width });
    return;
  }
  let from = left;
  for (const choice of choices) {
    pages.box(from, top + 13, 8);
    pages.text(choice, from + 11, top + 12, { size: LABEL });
    from += 11 + pages.widthOf(choice, LABEL, PLAIN) + 9;
  }
  const open = choices.length === 0 || choices.at(-1)?.endsWith(':') === true;
  const unitWidth = unit === undefined ? 0 : pages.widthOf(unit, LABEL, PLAIN) + 3;
  if (open) pages.line(from, base, left + width - unitWidth, base, HAIRLINE);
  if (unit !== undefined) {
    pages.text(unit, left + width - unitWidth + 3, base - 9, { size: LABEL });
  }
}
