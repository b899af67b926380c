import { printable } from './printable.js';

export const MARGIN = 36;
/** Text size that is easily read outdoors; nothing is smaller than 9. */
export const TEXT = 10;
/** The thinnest line. */
export const HAIRLINE = 0.5;
export const PLAIN = 'Helvetica';
export const BOLD = 'Helvetica-Bold';

const FOOT_HEIGHT = 16;

interface TextStyle {
  readonly size: number;
  readonly font?: string;
  /** What is longer is cut, with an ellipsis. */
  readonly width?: number;
}

/** The pages of a sheet while they are drawn, from the top down. */
export class SheetPages {
  /** Where the next part begins, in points from the top. */
  y = MARGIN;

  constructor(private readonly document: PDFKit.PDFDocument) {}

  /** Between the margins. */
  get width(): number {
    return this.document.page.width - 2 * MARGIN;
  }

  /** Where what belongs to the page ends. */
  get bottom(): number {
    return this.document.page.height - MARGIN - FOOT_HEIGHT;
  }

  nextPage(): void {
    this.document.addPage();
    this.y = MARGIN;
  }

  heading(text: string): void {
    this.text(text, MARGIN, this.y, { size: 11, font: BOLD });
    this.y += 15;
  }

  /** One line of text; its top left corner. */
  text(text: string, x: number, y: number, { size, font = PLAIN, width }: TextStyle): void {
    this.document
      .font(font)
      .fontSize(size)
      .text(printable(text), x, y, {
        lineBreak: false,
        ...(width !== undefined && { width, height: size + 2, ellipsis: true, lineBreak: true }),
      });
  }

  /** Text in as many lines as it takes; @returns their height */
  paragraph(text: string, x: number, y: number, width: number, font = PLAIN): number {
    this.document.font(font).fontSize(9).text(printable(text), x, y, { width });
    return this.heightOf(text, width, font);
  }

  /** Of a paragraph. */
  heightOf(text: string, width: number, font = PLAIN): number {
    return this.document.font(font).fontSize(9).heightOfString(printable(text), { width });
  }

  widthOf(text: string, size: number, font: string): number {
    return this.document.font(font).fontSize(size).widthOfString(printable(text));
  }

  line(x1: number, y1: number, x2: number, y2: number, thickness: number): void {
    this.document.lineWidth(thickness).moveTo(x1, y1).lineTo(x2, y2).stroke();
  }

  /** A small square to tick. */
  box(x: number, y: number, size: number): void {
    this.document.lineWidth(0.75).rect(x, y, size, size).stroke();
  }

  frame(x: number, y: number, width: number, height: number, thickness: number): void {
    this.document.lineWidth(thickness).rect(x, y, width, height).stroke();
  }

  /** A closed outline. */
  outline(points: readonly (readonly [number, number])[], thickness: number): void {
    this.document
      .lineWidth(thickness)
      .polygon(...points.map(([x, y]) => [x, y]))
      .stroke();
  }

  /** A filled triangle that points up, its middle at the point. */
  triangle(x: number, y: number, size: number): void {
    this.document.polygon([x, y - size], [x - size, y + size], [x + size, y + size]).fill('black');
  }

  /** On every page: what the sheet is of, and which page of how many. */
  writeFeet(foot: string, pageOf: (page: number, pages: number) => string): void {
    const { start, count } = this.document.bufferedPageRange();
    for (let page = start; page < start + count; page += 1) {
      this.document.switchToPage(page);
      const number = pageOf(page - start + 1, count);
      const numberWidth = this.widthOf(number, 9, PLAIN);
      const y = this.bottom + 4;
      this.text(foot, MARGIN, y, { size: 9, width: this.width - numberWidth - 12 });
      this.text(number, MARGIN + this.width - numberWidth, y, { size: 9 });
    }
  }
}
