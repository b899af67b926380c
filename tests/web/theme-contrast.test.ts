import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/**
 * Contrast ratio by the formula of WCAG 2.2 (section 5, "contrast ratio" and "relative luminance"):
 * (L1 + 0.05) / (L2 + 0.05), with L = 0.2126 R + 0.7152 G + 0.0722 B of the linear sRGB channels.
 */
function contrast(one: string, other: string): number {
  const [lighter, darker] = [luminance(one), luminance(other)].toSorted((a, b) => b - a);
  return ((lighter ?? 0) + 0.05) / ((darker ?? 0) + 0.05);
}

function luminance(colour: string): number {
  return 0.2126 * linear(colour, 1) + 0.7152 * linear(colour, 3) + 0.0722 * linear(colour, 5);
}

/** A channel of `#rrggbb` as a share of its full light. */
function linear(colour: string, at: number): number {
  const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

/** Colours of a theme, what it leaves out taken from the first. */
function coloursOf(css: string, theme: string): ReadonlyMap<string, string> {
  return new Map([...blockOf(css, null), ...blockOf(css, theme)]);
}

/** The colours that a theme itself sets; of `null`, the first, all that there are. */
function blockOf(css: string, theme: string | null): ReadonlyMap<string, string> {
  const colours = new Map<string, string>();
  for (const [, name, body = ''] of css.matchAll(
    /:root(?:\[data-theme='(\w+)'\])?\s*\{([^}]*)\}/gu,
  )) {
    if ((name ?? null) !== theme) continue;
    for (const [, token = '', value = ''] of body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})\b/giu)) {
      colours.set(token, value);
    }
  }
  return colours;
}

const tokens = readFileSync(new URL('../../web/src/ui/tokens.css', import.meta.url), 'utf8');

/** Text on what it may stand on: 4.5 to 1 (success criterion 1.4.3). */
const TEXT = ['ink', 'ink-soft', 'accent', 'warn'].flatMap((text) =>
  ['paper', 'sheet', 'wash', 'accent-wash', 'warn-wash'].map((ground) => [text, ground] as const),
);
/** Edges of controls and marks that carry meaning: 3 to 1 (success criterion 1.4.11). */
const MARKS = ['line', 'accent', 'warn', 'good', 'ink'].flatMap((mark) =>
  ['paper', 'sheet'].map((ground) => [mark, ground] as const),
);

test('the formula gives the values of the standard', () => {
  expect(contrast('#000000', '#ffffff')).toBe(21);
  // #777777 on white is the usual example of just too little (WCAG 2.2, technique G18 tools: 4.48).
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

describe.each(['light', 'sunlight', 'night'])('theme %s', (theme) => {
  const colours = coloursOf(tokens, theme);
  const ratio = (one: string, other: string): number => {
    const [first, second] = [colours.get(one), colours.get(other)];
    if (first === undefined || second === undefined) throw new Error(`no ${one} or ${other}`);
    return contrast(first, second);
  };

  test.each([
    ...TEXT,
    ['on-accent', 'accent'] as const,
    ['on-first', 'data-first'] as const,
    ['on-second', 'data-second'] as const,
  ])('text %s on %s', (text, ground) => {
    expect(ratio(text, ground)).toBeGreaterThanOrEqual(4.5);
  });

  test.each([...MARKS, ['ink', 'water'] as const])('mark %s on %s', (mark, ground) => {
    expect(ratio(mark, ground)).toBeGreaterThanOrEqual(3);
  });
});

test('sunlight is black on white: body text at AAA, 7 to 1, and more', () => {
  const colours = coloursOf(tokens, 'sunlight');
  for (const text of ['ink', 'ink-soft', 'accent', 'warn']) {
    expect(contrast(colours.get(text) ?? '', colours.get('paper') ?? '')).toBeGreaterThan(7);
  }
});

/**
 * Scotopic over photopic luminance, from CIE XYZ of the linear sRGB channels (IEC 61966-2-1): the
 * approximation 1.33 (1 + (Y + Z) / X) − 1.68 of Larson, Rushmeier & Piatko 1997, "A visibility matching
 * tone reproduction operator for high dynamic range scenes", IEEE TVCG 3:291 (formula from memory).
 */
function scotopicRatio(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => linear(colour, at));
  if (r === undefined || g === undefined || b === undefined) throw new Error(colour);
  const x = 0.4124 * r + 0.3576 * g + 0.1805 * b;
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  const z = 0.0193 * r + 0.1192 * g + 0.9505 * b;
  // Black is no light at all.
  if (x === 0) return 0;
  return 1.33 * (1 + (y + z) / x) - 1.68;
}

test('night keeps eyes adapted to the dark: dim, and of long waves that the rods hardly answer to', () => {
  // White of a screen (D65) has 2.5 by this formula; its pure red, which is the least, has 0.4.
  expect(scotopicRatio('#ffffff')).toBeCloseTo(2.57, 1);
  expect(scotopicRatio('#ff0000')).toBeCloseTo(0.4, 1);
  const night = blockOf(tokens, 'night');
  for (const colour of ['ink', 'accent', 'warn', 'good', 'line', 'data-only', 'water']) {
    expect([...night.keys()]).toContain(colour);
  }
  for (const [token, colour] of night) {
    // Beside white at the same luminance less than two fifths; and dim (common practice, no source).
    expect({ token, ratio: scotopicRatio(colour) < 1 }).toEqual({ token, ratio: true });
    expect({ token, isDim: luminance(colour) < 0.45 }).toEqual({ token, isDim: true });
  }
});

test('night leaves no colour as it is by day', () => {
  const day = blockOf(tokens, null);
  expect([...day.keys()].filter((token) => !blockOf(tokens, 'night').has(token))).toEqual([]);
});

describe('data colours of the night', () => {
  // What is told by colour is told by a pattern too; each has to be seen on its ground all the same.
  test.each(['agreed', 'compatible', 'differently', 'only', 'first', 'second'])('%s', (name) => {
    const colours = coloursOf(tokens, 'night');
    const ratio = contrast(colours.get(`data-${name}`) ?? '', colours.get('paper') ?? '');
    expect(ratio).toBeGreaterThanOrEqual(3);
  });
});
