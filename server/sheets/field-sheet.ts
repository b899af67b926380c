import { CAUTIONS, LAST_WORD } from '../core/cautions.js';
import type { EarlierNumber, Section, VantagePoint } from '../core/model/snapshot.js';
import { leafOf } from '../core/taxa/leaf.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';
import { englishName } from '../core/taxa/taxon-name.js';
import { sectionMap, type SectionMap } from './section-map.js';
import { sheetTaxa } from './sheet-taxa.js';

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
  readonly title: string;
  /** At the foot of every page, so that loose pages find each other. */
  readonly foot: string;
  readonly date: string;
  readonly head: readonly SheetField[];
  readonly map: SectionMap;
  readonly cautions: readonly string[];
  readonly lastWord: string;
  readonly effort: readonly SheetField[];
  readonly columns: readonly { readonly name: string; readonly share: number }[];
  readonly keys: string;
  readonly rows: readonly SheetRow[];
  /** Fewest empty rows after those with a name. */
  readonly blankRows: number;
  readonly scans: {
    readonly intro: string;
    readonly rafts: number;
    readonly samples: number;
    readonly rows: number;
  };
}

/** The field sheet of an assignment: what the tally form asks, with space to write it in. */
export function fieldSheet({ count, window, sections, vantage, observer }: SheetPlan): FieldSheet {
  const place = sections.map(({ name }) => name).join(', ');
  const span = `${clock(window.start, count.timeZone)} to ${clock(window.end, count.timeZone)}`;
  return {
    title: 'Field sheet',
    foot: `${count.name} · ${place} · ${span} · ${observer}`,
    date: count.date,
    head: [
      { label: 'Count', value: count.name, twelfths: 12 },
      { label: 'Waterbody', value: count.waterbody, twelfths: 6 },
      { label: 'Date', value: longDate(count.date), twelfths: 6 },
      { label: 'Section', value: place, twelfths: 6 },
      { label: 'Window', value: `${span} (${count.timeZone})`, twelfths: 6 },
      { label: 'From', value: vantage?.name ?? '', twelfths: 6 },
      { label: 'Observer', value: observer, twelfths: 6 },
      {
        label: 'Who counted with you (everyone who found, named or called birds)',
        value: '',
        twelfths: 12,
      },
    ],
    map: sectionMap(sections, vantage),
    cautions: CAUTIONS,
    lastWord: LAST_WORD,
    effort: [
      { label: 'Began', value: '', twelfths: 2 },
      { label: 'Ended', value: '', twelfths: 2 },
      { label: 'Seen of the section', value: '', unit: '%', twelfths: 2 },
      {
        label: 'Set out to count',
        value: '',
        choices: ['all waterbirds', 'waterfowl', 'only:'],
        twelfths: 6,
      },
      { label: 'Wind, Beaufort', value: '', unit: '0–12', twelfths: 2 },
      { label: 'Sea state', value: '', unit: '0–9', twelfths: 2 },
      { label: 'Ice', value: '', unit: '%', twelfths: 2 },
      {
        label: 'Visibility',
        value: '',
        choices: ['good', 'moderate', 'poor', 'very poor'],
        twelfths: 6,
      },
      { label: 'Glare', value: '', choices: ['none', 'some', 'strong'], twelfths: 4 },
      { label: 'Disturbance', value: '', twelfths: 4 },
      { label: 'Optics', value: '', twelfths: 4 },
    ],
    columns: [
      { name: 'Code', share: 7 },
      { name: 'Name', share: 29 },
      { name: 'Number', share: 9 },
      { name: 'Method', share: 9 },
      { name: 'Time', share: 7 },
      { name: 'Doing', share: 7 },
      { name: 'Heading', share: 9 },
      { name: 'Flock', share: 8 },
      { name: 'Sex, age, marks, note', share: 21 },
    ],
    keys:
      'Number: whole birds, a range as 40–60, 0 for looked for and none, P for present but not counted. ' +
      'Method: 1 one by one, B in blocks (write the block’s size, as B50), S by a sample, G guess. ' +
      'Doing: W on water, L on land or ice, F flying through, X flushed. Heading: degrees from north. ' +
      'Not sure of the species? Use the pair or group: it is a good answer.',
    rows: sheetTaxa(count.history).map(sheetRow),
    blankRows: 10,
    scans: {
      intro:
        'For a mixed raft: count the whole of it, then name 30 to 50 birds in each of several parts. ' +
        'What you cannot tell goes to a pair or group.',
      rafts: 2,
      samples: 6,
      rows: 5,
    },
  };
}

/** @param taxon a name that `parseTaxon` reads */
function sheetRow(taxon: string): SheetRow {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) return { code: '', name: taxon };
  const [only, ...others] = parsed.candidates;
  const code = only === undefined || others.length > 0 ? null : (leafOf(only)?.code ?? null);
  return { code: code ?? '', name: englishName(parsed.candidates) };
}

function clock(instant: string, timeZone: string): string {
  return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone }).format(
    new Date(instant),
  );
}

function longDate(date: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  })
    .format(new Date(`${date}T00:00:00Z`))
    .replace(',', '');
}
