import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { CAUTIONS, LAST_WORD } from '../../server/core/cautions.js';
import { parseTaxon } from '../../server/core/taxa/parse-taxon.js';
import { drawFieldSheet } from '../../server/sheets/draw-field-sheet.js';
import { fieldSheet, SHEET_LANGUAGES, type SheetPlan } from '../../server/sheets/field-sheet.js';
import { printable } from '../../server/sheets/printable.js';
import { roundBelow, sectionMap } from '../../server/sheets/section-map.js';
import { sheetTaxa } from '../../server/sheets/sheet-taxa.js';
import { fr } from '../../server/sheets/words/fr.js';
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

const LANGUAGES = Object.keys(SHEET_LANGUAGES) as (keyof typeof SHEET_LANGUAGES)[];
const SHEETS = LANGUAGES.flatMap((language) =>
  (['a4', 'letter'] as const).map((paper) => [language, paper] as const),
);

const draw = async (plan: SheetPlan, paper: 'a4' | 'letter', language: 'en' | 'fr' = 'en') =>
  readPdf(await drawFieldSheet(fieldSheet(plan, language), paper));
/** However it was broken into lines. */
const words = (all: string): string => all.replace(/\s+/gu, ' ');

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
  const sheet = fieldSheet(PLAN, 'en');

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
    for (const { en } of [...CAUTIONS, LAST_WORD]) expect(words(text)).toContain(words(en));
    expect(back?.texts).toContain('Mixed rafts: scan samples');
    expect(back?.texts).toContain('Sample 6');
    expect(back?.texts.join('\n')).toContain('page 2 of 2');
  });

  it.each(SHEETS)(
    'in %s on %s is read alike by pdfjs-dist 4.10.38, nothing on another',
    async (language, paper) => {
      const bytes = await drawFieldSheet(fieldSheet(PLAN, language), paper);
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
        // Where each text is and how far it reaches, by that reader's own measure of the font.
        const places = items.flatMap((item) => {
          if (!('str' in item) || item.str.trim() === '') return [];
          const [, , , , x = 0, y = 0] = item.transform as readonly number[];
          return [{ text: item.str, x, y, end: x + item.width }];
        });
        for (const one of places) {
          expect(one.end, one.text).toBeLessThanOrEqual(width - 36 + 0.1);
          for (const other of places) {
            const isRight = other.y === one.y && other.x > one.x;
            if (isRight) expect(one.end, `${one.text} | ${other.text}`).toBeLessThan(other.x);
          }
        }
      }
      await document.destroy();
    },
  );

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
    const bytes = async (plan: SheetPlan) => drawFieldSheet(fieldSheet(plan, 'en'), 'a4');
    const first = await bytes(PLAN);
    expect((await bytes(PLAN)).equals(first)).toBe(true);
    expect(first.toString('latin1')).toContain('D:20270116000000Z');
    const later = { ...PLAN, count: { ...PLAN.count, date: '2027-01-17' } };
    expect((await bytes(later)).equals(first)).toBe(false);
  });

  it('goes on on further pages where names are many, each with its heading and foot', async () => {
    const sheet = fieldSheet(PLAN, 'en');
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

describe('a field sheet in French', () => {
  const sheet = fieldSheet(PLAN, 'fr');

  it.each(['a4', 'letter'] as const)(
    'says all of it on %s, whole and on two pages',
    async (paper) => {
      const pages = await draw(PLAN, paper, 'fr');
      expect(pages).toHaveLength(2);
      const texts = pages.flatMap((page) => page.texts);
      const all = words(texts.join(' '));
      const { fileTitle, span, pageOf, raft, sample, columns, locale, scopes, ...single } = fr;
      const { visibilities, glares, ...plain } = single;
      for (const said of [
        ...Object.values(plain),
        ...Object.values(columns),
        ...scopes,
        ...visibilities,
        ...glares,
        ...CAUTIONS.map((caution) => caution.fr),
        LAST_WORD.fr,
        ...sheet.rows.map(({ name }) => name),
        'samedi 16 janvier 2027',
        'de 08:00 à 11:00 (America/Toronto)',
        'Rassemblement 2',
        'Échantillon 6',
        'page 1 sur 2',
        'page 2 sur 2',
      ]) {
        expect(all, said).toContain(words(said));
      }
      // The sign of a letter that the font lacks, or of a text that was cut.
      expect(all).not.toMatch(/[…\ufffd]|\?(?! )/u);
      for (const { texts: own } of pages) expect(own.at(-2)).toContain('de 08:00 à 11:00');
      expect([fileTitle('x'), span('a', 'b'), pageOf(1, 2), raft(2), sample(6), locale]).toEqual([
        'Fiche de terrain\u00a0: x',
        'de a à b',
        'page 1 sur 2',
        'Rassemblement 2',
        'Échantillon 6',
        'fr',
      ]);
    },
  );

  it('leaves nothing in English but what both languages write alike', async () => {
    const textsIn = async (language: 'en' | 'fr') =>
      new Set((await draw(PLAN, 'a4', language)).flatMap((page) => page.texts));
    const [english, french] = [await textsIn('en'), await textsIn('fr')];
    const codes = sheet.rows.flatMap(({ code }) => (code === '' ? [] : [code]));
    const alike = [...french].filter((text) => english.has(text) && !codes.includes(text));
    expect(new Set(alike)).toEqual(
      new Set([
        ...['Alder Pond, January', 'Alder Pond', 'Baie d’Émeraude', 'Dock', 'Zoë Walesa'],
        ...['Date', 'Code', '%', '0–12', '0–9', '500 m', 'N'],
        ...['Aythya sp.'],
      ]),
    );
    expect(codes).toContain('LTDU');
  });

  it('names birds by the French names of the list, and keeps the order and the codes', () => {
    const english = fieldSheet(PLAN, 'en');
    expect(sheet.rows.map(({ code }) => code)).toEqual(english.rows.map(({ code }) => code));
    expect(sheet.rows.slice(0, 2)).toEqual([
      { code: 'LTDU', name: 'Harelde kakawi' },
      { code: '', name: 'Fuligule milouinan/Petit Fuligule' },
    ]);
    for (const [at, { name }] of sheet.rows.entries()) {
      if (!name.endsWith('sp.')) expect(name).not.toBe(english.rows[at]?.name);
    }
  });

  it('has a no-break space before signs, so that none begins a line', () => {
    const all: readonly unknown[] = [
      ...Object.values<unknown>({ ...fr }),
      ...CAUTIONS.map((caution) => caution.fr),
      LAST_WORD.fr,
    ];
    for (const text of all.filter((each) => typeof each === 'string')) {
      expect(text).not.toMatch(/[^\u00a0][;:?!]/u);
    }
  });

  it('says its language and title in the file, for screen readers', async () => {
    const file = (await drawFieldSheet(sheet, 'a4')).toString('latin1');
    expect(file).toContain('/Lang (fr)');
  });
});

it('letters that the built-in fonts lack are written plainly, and none is lost silently', () => {
  expect(printable('Zoë Wałęsa, Šárka – “œuvre”')).toBe('Zoë Walesa, Šárka – “œuvre”');
  expect(printable('Łódź 山')).toBe('Lódz ?');
  expect(printable('1\u202f200 œufs')).toBe('1\u00a0200 œufs');
});
