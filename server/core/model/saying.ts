import { englishName } from '../taxa/taxon-name.js';

/**
 * A sentence, or a part of one, as data: an English template and what stands in its {places}. What is
 * said to people is made as a saying and turned into text where the reader's language is known.
 */
export interface Saying {
  readonly text: string;
  readonly values: Readonly<Record<string, Said>>;
}

/** What may stand in a place. A number is written as the language writes it, a text as it is. */
export type Said = string | number | Saying | SaidTaxon | SaidBirds | SaidTenths;

/** A candidate set, called by its common name. */
interface SaidTaxon {
  readonly taxon: readonly string[];
}

/** A number of birds, thousands apart. */
interface SaidBirds {
  readonly birds: number;
}

/** A number with one decimal, also where that is 0. */
interface SaidTenths {
  readonly tenths: number;
}

/** A language: its templates by the English ones, and how it writes values. */
export interface Wording {
  readonly templates: Readonly<Record<string, string>>;
  readonly number: (value: number) => string;
  /** Of whole birds. */
  readonly birds: (value: number) => string;
  readonly tenths: (value: number) => string;
  readonly taxon: (candidates: readonly string[]) => string;
}

/** Templates are written in English. */
export const ENGLISH: Wording = {
  templates: {},
  number: String,
  birds: (value) => String(value).replace(/\B(?=(\d{3})+$)/gu, ','),
  tenths: (value) => value.toFixed(1),
  taxon: englishName,
};

type Places<Text extends string> = Text extends `${string}{${infer Place}}${infer Rest}`
  ? Place | Places<Rest>
  : never;

/**
 * Makes a saying. Singular and plural are two templates, since languages differ in more than an s.
 *
 * @param text written out at the call, so that a test can hold the French against all of them
 * @example say('{low} is above {high}', { low: 5, high: 3 })
 */
export function say<const Text extends string>(
  text: Text,
  ...values: [Places<Text>] extends [never] ? [] : [Readonly<Record<Places<Text>, Said>>]
): Saying {
  return { text, values: values[0] ?? {} };
}

/** Codes, ids or sayings one after the other, with the same few characters between them. */
export function joined(parts: readonly Said[], between: string): Saying {
  return {
    text: parts.map((_, index) => `{${index}}`).join(between),
    values: Object.fromEntries(parts.entries()),
  };
}

/** `a or b or c` */
export function alternatives(parts: readonly Said[]): Saying {
  return parts
    .slice(1)
    .reduce<Saying>((others, last) => say('{others} or {last}', { others, last }), first(parts));
}

/** `a and b and c` */
export function together(parts: readonly Said[]): Saying {
  return parts
    .slice(1)
    .reduce<Saying>((others, last) => say('{others} and {last}', { others, last }), first(parts));
}

/** `a, b and c` */
export function listed(parts: readonly Said[]): Said {
  const last = parts.at(-1) ?? '';
  if (parts.length < 2) return last;
  return say('{others} and {last}', { others: joined(parts.slice(0, -1), ', '), last });
}

/** `a; b; c` */
export function setApart(parts: readonly Said[]): Saying {
  return parts
    .slice(1)
    .reduce<Saying>((others, last) => say('{others}; {last}', { others, last }), first(parts));
}

function first(parts: readonly Said[]): Saying {
  return joined(parts.slice(0, 1), '');
}

/** A term that is held as data in English and has its translation beside it, such as a field mark. */
export function term(text: string): Saying {
  return { text, values: {} };
}

/** What reads the same in all languages. */
export function asWritten(text: string): Saying {
  return joined([text], '');
}

/** The sentence in a language; a template that the language lacks stays English. */
export function saidIn({ text, values }: Saying, wording: Wording): string {
  return (wording.templates[text] ?? text).replace(/\{(\w+)\}/gu, (place, name: string) => {
    const value = values[name];
    return value === undefined ? place : writtenIn(value, wording);
  });
}

/** One value as a language writes it. */
export function writtenIn(value: Said, wording: Wording): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return wording.number(value);
  if ('taxon' in value) return wording.taxon(value.taxon);
  if ('birds' in value) return wording.birds(value.birds);
  return 'tenths' in value ? wording.tenths(value.tenths) : saidIn(value, wording);
}

export function inEnglish(saying: Saying): string {
  return saidIn(saying, ENGLISH);
}
