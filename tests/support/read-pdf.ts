import { inflateSync } from 'node:zlib';

/** A page as a reader that knows no more than the format finds it (ISO 32000-1, 7.8 and 9.4). */
export interface PdfPage {
  /** Points. */
  readonly width: number;
  readonly height: number;
  /** Texts in the order they were drawn; kerning and line breaks left out. */
  readonly texts: readonly string[];
  /** Sizes of text and widths of lines that are set, in points. */
  readonly textSizes: readonly number[];
  readonly lineWidths: readonly number[];
  /** Every colour that is set, its components as written. */
  readonly colours: readonly string[];
}

/**
 * Windows-1252 from 0x80 to 0x9f (WHATWG Encoding, index windows-1252), which the built-in fonts are
 * written in; Node's own decoder takes these for control characters.
 */
const HIGH = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/**
 * Reads the pages of a PDF whose content streams are deflated and whose text is written in the
 * built-in fonts, which is all that a field sheet is.
 */
export function readPdf(bytes: Uint8Array): readonly PdfPage[] {
  const file = Buffer.from(bytes).toString('latin1');
  if (!file.startsWith('%PDF-')) throw new Error('it does not begin as a PDF does');
  const objects = new Map(
    [...file.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/gu)].map(([, id = '', body = '']) => [
      id,
      body,
    ]),
  );
  const kids = [...objects.values()].find((body) => /\/Type \/Pages\b/u.test(body)) ?? '';
  const order = [...(/\/Kids \[([^\]]*)\]/u.exec(kids)?.[1] ?? '').matchAll(/(\d+) 0 R/gu)];
  return order.map(([, id = '']) => {
    const page = objects.get(id) ?? '';
    const [, width = '', height = ''] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/u.exec(page) ?? [];
    const content = objects.get(/\/Contents (\d+) 0 R/u.exec(page)?.[1] ?? '') ?? '';
    return { width: Number(width), height: Number(height), ...contentOf(content) };
  });
}

function contentOf(body: string): Omit<PdfPage, 'width' | 'height'> {
  const stream = /stream\n([\s\S]*)\nendstream/u.exec(body)?.[1] ?? '';
  const drawing = inflateSync(Buffer.from(stream, 'latin1')).toString('latin1');
  const all = (pattern: RegExp): string[] =>
    [...drawing.matchAll(pattern)].map(([, one = '']) => one);
  return {
    texts: all(/\[([^\]]*)\] TJ/gu).map((shown) =>
      [...shown.matchAll(/<([0-9a-f]*)>/gu)]
        .map(([, hex = '']) => Buffer.from(hex, 'hex').toString('latin1'))
        .join('')
        .replace(/[\u0080-\u009f]/gu, (letter) => HIGH.charAt(letter.charCodeAt(0) - 0x80)),
    ),
    textSizes: all(/\/F\d+ ([\d.]+) Tf/gu).map(Number),
    lineWidths: all(/^([\d.]+) w$/gmu).map(Number),
    colours: all(/^([\d. ]+) (?:scn|SCN|rg|RG|g|G|k|K)$/gmu),
  };
}
