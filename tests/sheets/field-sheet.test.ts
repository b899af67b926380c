import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../server/core/cautions.js';
import { parseTaxon } from '../../server/core/taxa/parse-taxon.js';
import { drawFieldSheet } from '../../server/sheets/draw-field-sheet.js';
import { fieldSheet, type SheetPlan } from '../../server/sheets/field-sheet.js';
import { printable } from '../../server/sheets/printable.js';
import { roundBelow, sectionMap } from '../../server/sheets/section-map.js';
import { sheetTaxa } from '../../server/sheets/sheet-taxa.js';
import { readPdf } from '../support/read-pdf.js';
import { square } from '../support/small-folder.js';

const polygon = [square(-79.02, 44) as [number, number][]];

const PLAN: SheetPlan = {
  count: {
    name: 'Alder Pond, January',
    waterbody: 'Alder Pond',
    date: '2027-01-16',
    timeZone: 'America/Toronto',
    history: [
      { candidates: ['Clangula hyemalis'], year: 2025, number: 900 },
      { candidates: ['Clangula hyemalis'], year: 2026, number: 700 },
      { candidates: ['Aythya affinis', 'Aythya marila'], year: 2026, number: 40 },
      { candidates: ['Gavia immer'], year: 2026, number: 0 },
    ],
  },
  window: { start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' },
  sections: [{ id: 's1', name: 'Baie d’Émeraude', polygon }],
  vantage: { id: 'v1', name: 'Dock', position: [-79.01, 43.999] },
  observer: 'Zoë Wałęsa',
};

const draw = async (plan: SheetPlan, paper: 'a4' | 'letter') =>
  readPdf(await drawFieldSheet(fieldSheet(plan), paper));

describe('the names on a field sheet', () => {
  const names = sheetTaxa(PLAN.count.history);

  it('are what earlier years had, the most regular first, then what is common', () => {
    expect(names.slice(0, 2)).toEqual(['Clangula hyemalis', 'Aythya affinis/marila']);
    expect(names).not.toContain('Gavia immer');
    expect(names).toContain('Anas platyrhynchos');
    for (const name of names) expect(parseTaxon(name).ok, name).toBe(true);
    expect(new Set(names).size).toBe(names.length);
  });

  it('have pairs and groups as near as their species', () => {
    const plain = sheetTaxa([
      { candidates: ['Aythya affinis'], year: 2026, number: 9 },
      { candidates: ['Aythya marila'], year: 2026, number: 8 },
    ]);
    expect(plain.slice(0, 4)).toEqual([
      'Aythya affinis',
      'Aythya marila',
      'Aythya affinis/marila',
      'Aythya sp.',
    ]);
  });
});

describe('a field sheet', () => {
  const sheet = fieldSheet(PLAN);

  it('has codes of the published list where there is one, and coins none', () => {
    expect(sheet.rows[0]).toEqual({ code: 'LTDU', name: 'Long-tailed Duck' });
    expect(sheet.rows[1]).toEqual({ code: '', name: 'Greater/Lesser Scaup' });
  });

  it('asks what the form asks', () => {
    const labels = [...sheet.head, ...sheet.effort].map(({ label }) => label).join(', ');
    for (const asked of [
      'Count, Waterbody, Date, Section, Window, From, Observer, Who counted with you',
      'Began, Ended, Seen of the section, Set out to count',
      'Wind, Beaufort, Sea state, Ice, Visibility, Glare, Disturbance, Optics',
    ]) {
      expect(labels).toContain(asked);
    }
    expect(sheet.columns.map(({ name }) => name).join(', ')).toMatch(
      /^Code, Name, Number, Method, Time, Doing, Heading, Flock, .*note$/u,
    );
  });

  it('shows where: outlines and scale in kilometres, a bar of a round length', () => {
    const map = sectionMap(PLAN.sections, PLAN.vantage);
    // 0.02° of longitude at 44° N is 1.604 km on WGS 84 (111.320 km × cos 44° × 1.0016, by hand), and
    // 0.021° of latitude 2.333 km (111.1 km a degree there).
    expect(map.to[0] - map.from[0]).toBeCloseTo(1.604, 2);
    expect(map.to[1] - map.from[1]).toBeCloseTo(2.333, 2);
    expect(map.scaleBar).toBe(0.5);
    expect(roundBelow(0.2)).toBe(0.2);
    expect([0.3, 7, 19.9, 1234].map(roundBelow)).toEqual([0.2, 5, 10, 1000]);
  });
});

describe('a field sheet on paper', () => {
  it.each([
    // ISO 216: 210 × 297 mm; letter: 8.5 × 11 inches; 72 points an inch.
    ['a4', (210 / 25.4) * 72, (297 / 25.4) * 72],
    ['letter', 8.5 * 72, 11 * 72],
  ] as const)('is of the size of %s, on both sides of one sheet', async (paper, width, height) => {
    const pages = await draw(PLAN, paper);
    expect(pages).toHaveLength(2);
    for (const page of pages) {
      expect(page.width).toBeCloseTo(width, 1);
      expect(page.height).toBeCloseTo(height, 1);
    }
  });

  it('says all of it: head, cautions, expected taxa, scan samples, pages', async () => {
    const [front, back] = await draw(PLAN, 'a4');
    const text = front?.texts.join('\n') ?? '';
    for (const said of [
      'Alder Pond, January',
      'Saturday 16 January 2027',
      '08:00 to 11:00 (America/Toronto)',
      'Baie d’Émeraude',
      'Zoë Walesa',
      'Long-tailed Duck',
      'Greater/Lesser Scaup',
      '500 m',
      'page 1 of 2',
    ]) {
      expect(text).toContain(said);
    }
    const words = (all: string): string => all.replace(/\s+/gu, ' ');
    for (const caution of CAUTIONS) expect(words(text)).toContain(words(caution));
    expect(back?.texts).toContain('Mixed rafts: scan samples');
    expect(back?.texts).toContain('Sample 6');
    expect(back?.texts.join('\n')).toContain('page 2 of 2');
  });

  it('is read alike by a general-purpose reader of PDFs (pdfjs-dist 4.10.38)', async () => {
    const bytes = await drawFieldSheet(fieldSheet(PLAN), 'letter');
    const own = readPdf(bytes);
    const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    expect(document.numPages).toBe(own.length);
    const squeezed = (texts: readonly string[]): string => texts.join('').replace(/\s+/gu, '');
    for (const [index, page] of own.entries()) {
      const read = await document.getPage(index + 1);
      const { width, height } = read.getViewport({ scale: 1 });
      expect([width, height]).toEqual([page.width, page.height]);
      const { items } = await read.getTextContent();
      const texts = items.flatMap((item) => ('str' in item ? [item.str] : []));
      expect(squeezed(texts)).toBe(squeezed(page.texts));
    }
    await document.destroy();
  });

  it('is black on white, no line under half a point, no text under nine', async () => {
    for (const page of await draw(PLAN, 'letter')) {
      expect(page.texts.length).toBeGreaterThan(20);
      expect(page.lineWidths.length).toBeGreaterThan(10);
      expect(Math.min(...page.lineWidths)).toBeGreaterThanOrEqual(0.5);
      expect(Math.min(...page.textSizes)).toBeGreaterThanOrEqual(9);
      for (const colour of page.colours) expect(colour.split(' ').map(Number)).toEqual([0, 0, 0]);
    }
  });

  it('is the same to the byte for the same plan, and another for another day', async () => {
    const bytes = async (plan: SheetPlan) => drawFieldSheet(fieldSheet(plan), 'a4');
    const first = await bytes(PLAN);
    expect((await bytes(PLAN)).equals(first)).toBe(true);
    expect(first.toString('latin1')).toContain('D:20270116000000Z');
    const later = { ...PLAN, count: { ...PLAN.count, date: '2027-01-17' } };
    expect((await bytes(later)).equals(first)).toBe(false);
  });

  it('goes on on further pages where names are many, each with its heading and foot', async () => {
    const sheet = fieldSheet(PLAN);
    const rows = Array.from({ length: 90 }, (_, at) => ({ code: '', name: `Bird ${at}` }));
    const pages = readPdf(await drawFieldSheet({ ...sheet, rows }, 'a4'));
    const all = pages.flatMap(({ texts }) => texts);
    for (const { name } of rows) expect(all.filter((text) => text === name)).toHaveLength(1);
    for (const { texts } of pages.filter((page) =>
      page.texts.some((text) => /^Bird /u.test(text)),
    )) {
      expect(texts.filter((text) => text === 'Number')).toHaveLength(1);
    }
    expect(all.some((text) => text === `page ${pages.length} of ${pages.length}`)).toBe(true);
  });
});

it('letters that the built-in fonts lack are written plainly, and none is lost silently', () => {
  expect(printable('Zoë Wałęsa, Šárka – “œuvre”')).toBe('Zoë Walesa, Šárka – “œuvre”');
  expect(printable('Łódź 山')).toBe('Lódz ?');
});
