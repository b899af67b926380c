import { CAUTIONS, LAST_WORD } from '../core/cautions.js';
import type { EarlierNumber, Section, VantagePoint } from '../core/model/snapshot.js';
import { leafOf } from '../core/taxa/leaf.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';
import { commonName, type NameLanguage } from '../core/taxa/taxon-name.js';
import { sectionMap, type SectionMap } from './section-map.js';
import { sheetTaxa } from './sheet-taxa.js';
import { en } from './words/en.js';
import { fr } from './words/fr.js';
import type { SheetWords } from './words/sheet-words.js';

/** The languages that a field sheet is written in. */
export const SHEET_LANGUAGES: Readonly<Record<NameLanguage, SheetWords>> = { en, fr };

/** What a field sheet is made from: the plan of one assignment. */
export interface SheetPlan {
  readonly count: {
    readonly name: string;
    readonly waterbody: string;
    /** ISO 8601 calendar date at the waterbody. */
    readonly date: string;
    readonly timeZone: string;
    readonly history: readonly EarlierNumber[];
  };
  readonly window: { readonly start: string; readonly end: string };
  /** The sections of the assignment. */
  readonly sections: readonly Section[];
  readonly vantage: VantagePoint | null;
  readonly observer: string;
}

/** Something to read, or a space to write in: `value` is empty then. */
export interface SheetField {
  readonly label: string;
  readonly value: string;
  /** Words to tick instead of writing, or a unit behind the space. */
  readonly choices?: readonly string[];
  readonly unit?: string;
  /** Shares of the sheet's width, in twelfths. */
  readonly twelfths: number;
}

export interface SheetRow {
  /** Four-letter code of the IBP–AOS list, or empty. */
  readonly code: string;
  readonly name: string;
}

/** What stands on a field sheet, in the order of the page; how it is drawn is said elsewhere. */
export interface FieldSheet {
  readonly language: NameLanguage;
  readonly words: SheetWords;
  /** At the foot of every page, so that loose pages find each other. */
  readonly foot: string;
  readonly date: string;
  readonly head: readonly SheetField[];
  readonly map: SectionMap;
  readonly cautions: readonly string[];
  readonly lastWord: string;
  readonly effort: readonly SheetField[];
  readonly columns: readonly { readonly name: string; readonly share: number }[];
  readonly rows: readonly SheetRow[];
  /** Fewest empty rows after those with a name. */
  readonly blankRows: number;
  readonly scans: {
    readonly rafts: number;
    readonly samples: number;
    readonly rows: number;
  };
}

/** The field sheet of an assignment: what the tally form asks, with space to write it in. */
export function fieldSheet(plan: SheetPlan, language: NameLanguage): FieldSheet {
  const { count, window, sections, vantage, observer } = plan;
  const words = SHEET_LANGUAGES[language];
  const clock = (instant: string): string => clockTime(instant, count.timeZone, words.locale);
  const place = sections.map(({ name }) => name).join(', ');
  const span = words.span(clock(window.start), clock(window.end));
  return {
    language,
    words,
    foot: `${count.name} · ${place} · ${span} · ${observer}`,
    date: count.date,
    head: [
      { label: words.count, value: count.name, twelfths: 12 },
      { label: words.waterbody, value: count.waterbody, twelfths: 6 },
      { label: words.date, value: longDate(count.date, words.locale), twelfths: 6 },
      { label: words.section, value: place, twelfths: 6 },
      { label: words.window, value: `${span} (${count.timeZone})`, twelfths: 6 },
      { label: words.from, value: vantage?.name ?? '', twelfths: 6 },
      { label: words.observer, value: observer, twelfths: 6 },
      { label: words.party, value: '', twelfths: 12 },
    ],
    map: sectionMap(sections, vantage),
    cautions: CAUTIONS.map((caution) => caution[language]),
    lastWord: LAST_WORD[language],
    effort: [
      { label: words.began, value: '', twelfths: 2 },
      { label: words.ended, value: '', twelfths: 2 },
      { label: words.seen, value: '', unit: '%', twelfths: 2 },
      { label: words.scope, value: '', choices: words.scopes, twelfths: 6 },
      { label: words.wind, value: '', unit: '0–12', twelfths: 2 },
      { label: words.seaState, value: '', unit: '0–9', twelfths: 2 },
      { label: words.ice, value: '', unit: '%', twelfths: 2 },
      { label: words.visibility, value: '', choices: words.visibilities, twelfths: 6 },
      { label: words.glare, value: '', choices: words.glares, twelfths: 4 },
      { label: words.disturbance, value: '', twelfths: 4 },
      { label: words.optics, value: '', twelfths: 4 },
    ],
    columns: [
      { name: words.columns.code, share: 7 },
      { name: words.columns.name, share: 29 },
      { name: words.columns.number, share: 9 },
      { name: words.columns.method, share: 9 },
      { name: words.columns.time, share: 7 },
      { name: words.columns.doing, share: 7 },
      { name: words.columns.heading, share: 9 },
      { name: words.columns.flock, share: 7 },
      { name: words.columns.more, share: 22 },
    ],
    rows: sheetTaxa(count.history).map((taxon) => sheetRow(taxon, language)),
    blankRows: 10,
    scans: {
      rafts: 2,
      samples: 6,
      rows: 5,
    },
  };
}

/** @param taxon a name that `parseTaxon` reads */
function sheetRow(taxon: string, language: NameLanguage): SheetRow {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) return { code: '', name: taxon };
  const [only, ...others] = parsed.candidates;
  const code = only === undefined || others.length > 0 ? null : (leafOf(only)?.code ?? null);
  return { code: code ?? '', name: commonName(parsed.candidates, language) };
}

function clockTime(instant: string, timeZone: string, locale: string): string {
  return new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit', timeZone }).format(
    new Date(instant),
  );
}

function longDate(date: string, locale: string): string {
  return new Intl.DateTimeFormat(locale, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  })
    .format(new Date(`${date}T00:00:00Z`))
    .replace(',', '');
}
