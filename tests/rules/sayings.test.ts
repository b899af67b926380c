import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import {
  inEnglish,
  joined,
  listed,
  saidIn,
  say,
  setApart,
  term,
  writtenIn,
  type Said,
} from '../../server/core/model/saying.js';
import { FRENCH, FRENCH_SAYINGS } from '../../server/core/words/french.js';
import { frenchNumber } from '../../server/core/words/french-number.js';

const server = new URL('../../server/', import.meta.url).pathname;

/** The first arguments of all calls of `say`, the one of core/model/saying.ts. */
function sayings(): readonly { readonly where: string; readonly text: string | null }[] {
  return readdirSync(server, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.includes('generated'))
    .flatMap((name) => {
      const text = readFileSync(path.join(server, name), 'utf8');
      if (name !== 'core/model/saying.ts' && !/import[^;]*\bsay\b[^;]*saying\.js/u.test(text))
        return [];
      const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
      const found: { where: string; text: string | null }[] = [];
      const walk = (node: ts.Node): void => {
        if (ts.isCallExpression(node) && node.expression.getText() === 'say') {
          const [first] = node.arguments;
          const literal = first !== undefined && ts.isStringLiteralLike(first) ? first.text : null;
          const { line } = file.getLineAndCharacterOfPosition(node.getStart());
          found.push({ where: `${name}:${line + 1}`, text: literal });
        }
        ts.forEachChild(node, walk);
      };
      walk(file);
      return found;
    });
}

const all = sayings();
const templates = new Set(all.flatMap(({ text }) => text ?? []));
const placesOf = (text: string): readonly string[] => [...new Set(text.match(/\{\w+\}/gu))].sort();

describe('what the server and the core say', () => {
  it('is written out at the call, so that it can be found', () => {
    expect(all.length).toBeGreaterThan(300);
    expect(all.filter(({ text }) => text === null)).toEqual([]);
  });

  it('has a French template with the same places, and no French without an English one', () => {
    const french = Object.entries(FRENCH_SAYINGS);
    expect([...templates].filter((text) => FRENCH_SAYINGS[text] === undefined)).toEqual([]);
    expect(french.filter(([english]) => !templates.has(english))).toEqual([]);
    expect(
      french.filter(([english, text]) => placesOf(english).join() !== placesOf(text).join()),
    ).toEqual([]);
  });

  // Lexique des règles typographiques en usage à l'Imprimerie nationale (from memory).
  it('has the spaces of French before double punctuation and inside guillemets', () => {
    const wrong = Object.values(FRENCH_SAYINGS).filter((text) =>
      /[^\s.] [:;!?»](?!\S)|« |[^\s\u00a0\u202f(][;!?»]|'/u.test(text.replaceAll('_ . :', '')),
    );
    expect(wrong).toEqual([]);
  });
});

describe('a saying', () => {
  it('is filled in once, its parts in the language of the whole', () => {
    const roles = say('{others} and {last}', { others: say('leader'), last: say('observer') });
    const saying = joined([roles, '{last}', 12345.5], ', ');
    expect(inEnglish(saying)).toBe('leader and observer, {last}, 12345.5');
    expect(saidIn(saying, FRENCH)).toBe('chef d’équipe et observateur, {last}, 12\u202f345,5');
  });

  it('calls taxa and writes numbers of birds as its language does', () => {
    const scaup = { taxon: ['Aythya affinis', 'Aythya marila'] };
    const whole = say('{number} {taxon}', { number: { birds: 1234567 }, taxon: scaup });
    expect(inEnglish(whole)).toBe('1,234,567 Greater/Lesser Scaup');
    expect(saidIn(whole, FRENCH)).toBe('1\u202f234\u202f567 Fuligule milouinan/Petit Fuligule');
    const length = say('{length} km', { length: { tenths: 1200 } });
    expect(inEnglish(length)).toBe('1200.0 km');
    expect(saidIn(length, FRENCH)).toBe('1\u202f200,0\u00a0km');
    const mark = say('{mark}: {state}', { mark: term('bill colour'), state: term('olive') });
    expect(inEnglish(mark)).toBe('bill colour: olive');
    expect(saidIn(mark, FRENCH)).toBe('couleur du bec\u00a0: olive');
  });

  it('lists one, two and more', () => {
    const parts = ['a', say('observer'), 'c'];
    const lists = (make: (parts: readonly Said[]) => Said) =>
      [1, 2, 3].map((many) => writtenIn(make(parts.slice(0, many)), FRENCH));
    expect(lists(listed)).toEqual(['a', 'a et observateur', 'a, observateur et c']);
    expect(lists(setApart)).toEqual(['a', 'a\u202f; observateur', 'a\u202f; observateur\u202f; c']);
    expect(listed([])).toBe('');
  });

  it('writes French numbers as a general-purpose formatter does', () => {
    const reference = new Intl.NumberFormat('fr', { maximumFractionDigits: 9 });
    for (const value of [0, 7, 999, 1000, 45678, 10_000_000, 0.25, 1234.5]) {
      expect(frenchNumber(value)).toBe(reference.format(value));
    }
    expect(frenchNumber(-12345.5)).toBe('-12\u202f345,5');
  });
});
