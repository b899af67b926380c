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
  const channel = (at: number): number => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

/** Colours of a theme, what it leaves out taken from the first. */
function coloursOf(css: string, theme: string | null): ReadonlyMap<string, string> {
  const blocks = [...css.matchAll(/:root(\[data-theme='(\w+)'\])?\s*\{([^}]*)\}/gu)];
  const colours = new Map<string, string>();
  for (const [, , name, body = ''] of blocks) {
    if (name !== undefined && name !== theme) continue;
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

  test.each([...TEXT, ['on-accent', 'accent'] as const])('text %s on %s', (text, ground) => {
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

test('night is dim: nothing on it is brighter than two thirds of white', () => {
  // So that eyes stay adapted to the dark (common practice, no source).
  for (const [token, colour] of coloursOf(tokens, 'night')) {
    expect({ token, isDim: luminance(colour) < 2 / 3 || token.startsWith('data-') }).toEqual({
      token,
      isDim: true,
    });
  }
});
