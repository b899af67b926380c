import { i18n, type Messages } from '@lingui/core';
import { useSyncExternalStore } from 'react';
import { ENGLISH, type Wording } from '../../../server/core/model/saying.js';
import { commonName } from '../../../server/core/taxa/taxon-name.js';
import { readKept, writeKept } from './kept.js';

/** The languages that the pages are written in, each by its own name. */
export const LANGUAGES = { en: 'English', fr: 'Français' } as const;
export type Language = keyof typeof LANGUAGES;

/** How numbers and dates are written; English puts the day before the month. */
const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', fr: 'fr' };

/** A folder of web/src with a catalogue of its own. */
type Area = 'ui' | 'people' | 'plans' | 'tallies' | 'reviews' | 'seals';

/** What a phone needs from the first page on; pages of the desk bring theirs along. */
const FIRST_AREAS: readonly Area[] = ['ui', 'people', 'plans', 'tallies'];

interface Catalogue {
  readonly messages: Messages;
}

const catalogues = import.meta.glob<Catalogue>('../*/messages/*.po');

/** Field marks are data of the core, which is in English; the French of their texts is looked up by these. */
const frenchMarks = () => import('../../../server/core/marks/french-marks.js');

const key = 'countersign.language';
const areas = new Set<Area>(FIRST_AREAS);

const isLanguage = (value: unknown): value is Language =>
  typeof value === 'string' && Object.hasOwn(LANGUAGES, value);

/** The language in use. */
export function language(): Language {
  return isLanguage(i18n.locale) ? i18n.locale : 'en';
}

/** The tag by which `Intl` writes numbers, dates and lists in the language in use. */
export function locale(): string {
  return LOCALES[language()];
}

export function useLanguage(): Language {
  return useSyncExternalStore((changed) => i18n.on('change', changed), language);
}

async function messagesOf(area: Area, chosen: Language): Promise<Messages> {
  // The build names the files of this folder from here.
  const folder = area === 'ui' ? '.' : `../${area}`;
  const catalogue = catalogues[`${folder}/messages/${chosen}.po`];
  if (catalogue === undefined) throw new Error(`There is no catalogue of ${area} in ${chosen}.`);
  return (await catalogue()).messages;
}

const wordings: Partial<Record<Language, Wording>> = { en: ENGLISH };

/** In what words the checks that the pages share with the server are said. */
export function wording(): Wording {
  return wordings[language()] ?? ENGLISH;
}

async function load(wanted: Iterable<Area>, chosen: Language): Promise<void> {
  wordings[chosen] ??= {
    ...(await import('./french-wording.js')).FRENCH,
    taxon: (candidates) => commonName(candidates, chosen),
  };
  const all = await Promise.all([...wanted].map((area) => messagesOf(area, chosen)));
  for (const messages of all) i18n.load(chosen, messages);
  if (chosen === 'fr') i18n.load(chosen, (await frenchMarks()).FRENCH_MARKS);
}

/** Fetches the messages of more pages, before these are drawn. */
export async function loadMessages(...more: readonly Area[]): Promise<void> {
  for (const area of more) areas.add(area);
  await load(more, language());
}

/** Changes the language of every page; the choice is kept in this browser. */
export async function chooseLanguage(chosen: Language): Promise<void> {
  await load(areas, chosen);
  writeKept(key, chosen);
  i18n.activate(chosen, [LOCALES[chosen]]);
  document.documentElement.lang = chosen;
}

/** The language chosen earlier in this browser, or else the first of the reader's that there is. */
export async function startLanguage(): Promise<void> {
  const asked = navigator.languages.map((tag) => tag.split('-', 1)[0]).find(isLanguage);
  const chosen = readKept(key, isLanguage) ?? asked ?? 'en';
  await load(areas, chosen);
  i18n.activate(chosen, [LOCALES[chosen]]);
  document.documentElement.lang = chosen;
}
