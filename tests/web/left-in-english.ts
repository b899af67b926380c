import { getCatalogs } from '@lingui/cli/api';
import { getConfig } from '@lingui/conf';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { FRENCH_SAYINGS } from '../../server/core/words/french.js';
import { accessibilityViolations, phone, settled, sidewaysOverflow } from './browser.mjs';

/** Shorter pieces of a sentence stand in words of either language. */
const LEAST_LENGTH = 12;

/** Messages of the pages; or with them what the server says, which phones keep as it was said. */
type Texts = 'messages' | 'messages and sayings';

const known = new Map<Texts, Promise<readonly string[]>>();

/**
 * What is said in English and not in French, in pieces: a message with places for values, plural forms
 * or marked-up parts is as many pieces as stand between these.
 */
async function englishPieces(what: Texts): Promise<readonly string[]> {
  const config = getConfig({
    configPath: new URL('../../web/lingui.config.js', import.meta.url).pathname,
  });
  const said: (readonly [english: string, french: string])[] = [];
  for (const catalogue of await getCatalogs(config)) {
    const french = await catalogue.read('fr');
    for (const [id, { translation = '' }] of Object.entries(await catalogue.read('en'))) {
      said.push([translation, french[id]?.translation ?? '']);
    }
  }
  if (what === 'messages and sayings') said.push(...Object.entries(FRENCH_SAYINGS));
  const inFrench = said.map(([, french]) => plain(french));
  const pieces = said.flatMap(([english]) => english.split(/[{}#]|<\/?\d+\/?>/u).map(plain));
  return [...new Set(pieces)].filter(
    (piece) => piece.length >= LEAST_LENGTH && !inFrench.some((french) => french.includes(piece)),
  );
}

function plain(text: string): string {
  return text.replaceAll(/\s+/gu, ' ').trim();
}

/**
 * Pieces of our English texts that a page in French still shows or tells a screen reader. What people
 * wrote is not among them.
 */
export async function leftInEnglish(
  page: Page,
  what: Texts = 'messages',
): Promise<readonly string[]> {
  const pieces = await (known.get(what) ?? englishPieces(what));
  known.set(what, Promise.resolve(pieces));
  const said = await page.evaluate(() => {
    const told = [...document.querySelectorAll('*')]
      .filter((element) => element.checkVisibility())
      .flatMap((element) =>
        ['aria-label', 'aria-roledescription', 'aria-valuetext', 'title', 'placeholder', 'alt'].map(
          (name) => element.getAttribute(name) ?? '',
        ),
      );
    return [document.title, document.body.innerText, ...told];
  });
  const texts = said.map(plain).filter((text) => text !== '');
  return pieces.filter((piece) => texts.some((text) => text.includes(piece)));
}

/** Chooses French on a page that is in English, and looks at it on a phone. */
export async function chooseFrench(page: Page): Promise<void> {
  await page.setViewportSize(phone);
  await page.getByLabel('Language').selectOption('fr');
  await page.locator('html[lang=fr]').waitFor({ state: 'attached' });
}

/** A page in French as it should be on a phone: nothing in English, accessible, not too wide. */
export async function expectFrench(page: Page, name: string): Promise<void> {
  await settled(page);
  const left = await leftInEnglish(page);
  const found = await accessibilityViolations(page);
  const overflow = await sidewaysOverflow(page);
  expect({ name, left, found, overflow }).toEqual({ name, left: [], found: [], overflow: 0 });
}
