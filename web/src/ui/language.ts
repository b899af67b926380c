import { i18n, type Messages } from '@lingui/core';
import { useSyncExternalStore } from 'react';
import { ENGLISH, type Wording } from '../../../server/core/model/saying.js';
import { readKept, writeKept } from './kept.js';

/** The languages that the pages are written in, each by its own name. */
export const LANGUAGES = { en: 'English', fr: 'Français' } as const;
export type Language = keyof typeof LANGUAGES;

/** How numbers and dates are written; English puts the day before the month. */
const LOCALES: Readonly<Record<Language, string>> = { en: 'en-GB', fr: 'fr' };

/** A folder of web/src whose pages bring a catalogue of their own along. */
type Area = 'reviews' | 'seals';

interface Catalogue {
  readonly messages: Messages;
}

interface FirstTexts {
  readonly catalogues: readonly Messages[];
}

/** What a phone needs from the first page on, in one file for each language. */
const firstTexts: Readonly<Record<Language, () => Promise<FirstTexts>>> = {
  en: () => import('./first-texts/en.js'),
  fr: () => import('./first-texts/fr.js'),
};
/** In what words the core speaks: its checks and field marks, which no first page begins with. */
const wordings: Readonly<Record<Language, () => Promise<Wording>>> = {
  en: () => Promise.resolve(ENGLISH),
  fr: async () => (await import('./french-wording.js')).FRENCH,
};
const catalogues = import.meta.glob<Catalogue>([
  '../reviews/messages/*.po',
  '../seals/messages/*.po',
]);

const key = 'countersign.language';
const areas = new Set<Area>();

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
  const catalogue = catalogues[`../${area}/messages/${chosen}.po`];
  if (catalogue === undefined) throw new Error(`There is no catalogue of ${area} in ${chosen}.`);
  return (await catalogue()).messages;
}

let currentWording = ENGLISH;

/** In what words the checks and field marks that the pages share with the server are said. */
export function wording(): Wording {
  return currentWording;
}

/** Draws everything in a language from now on; all messages are fetched before that. */
async function change(chosen: Language, words: Wording): Promise<void> {
  const [first, ...more] = await Promise.all([
    firstTexts[chosen](),
    ...[...areas].map((area) => messagesOf(area, chosen)),
  ]);
  for (const messages of [...first.catalogues, ...more]) i18n.load(chosen, messages);
  currentWording = words;
  i18n.activate(chosen, [LOCALES[chosen]]);
  document.documentElement.lang = chosen;
}

/** Fetches the messages of more pages, before these are drawn. */
export async function loadMessages(...more: readonly Area[]): Promise<void> {
  for (const area of more) areas.add(area);
  const chosen = language();
  const all = await Promise.all(more.map((area) => messagesOf(area, chosen)));
  for (const messages of all) i18n.load(chosen, messages);
}

/** Changes the language of every page; the choice is kept in this browser. */
export async function chooseLanguage(chosen: Language): Promise<void> {
  await change(chosen, await wordings[chosen]());
  writeKept(key, chosen);
}

/**
 * The language chosen earlier in this browser, or else the first of the reader's that there is. The words
 * of the core are not waited for: no page begins with a fault or a field mark (`startWording`).
 */
export async function startLanguage(): Promise<void> {
  const asked = navigator.languages.map((tag) => tag.split('-', 1)[0]).find(isLanguage);
  await change(readKept(key, isLanguage) ?? asked ?? 'en', ENGLISH);
}

/** Fetches the words of the core in the language that the pages started in. */
export async function startWording(): Promise<void> {
  const started = language();
  const words = await wordings[started]();
  // Another language may have been chosen meanwhile.
  if (language() === started) currentWording = words;
}
