import { getCatalogs } from '@lingui/cli/api';
import { getConfig } from '@lingui/conf';
import type { Page } from 'playwright-core';
import { phone } from './browser.mjs';

/** Shorter pieces of a sentence stand in words of either language. */
const LEAST_LENGTH = 12;

let known: Promise<readonly string[]> | undefined;

/**
 * What our English catalogues say and our French ones do not, in pieces: a message with places for
 * values, plural forms or marked-up parts is as many pieces as stand between these.
 */
async function englishPieces(): Promise<readonly string[]> {
  const config = getConfig({
    configPath: new URL('../../web/lingui.config.js', import.meta.url).pathname,
  });
  const english = new Set<string>();
  const french: string[] = [];
  for (const catalogue of await getCatalogs(config)) {
    for (const { translation = '' } of Object.values(await catalogue.read('en'))) {
      for (const piece of translation.split(/[{}#]|<\/?\d+\/?>/u)) english.add(plain(piece));
    }
    for (const { translation = '' } of Object.values(await catalogue.read('fr'))) {
      french.push(plain(translation));
    }
  }
  return [...english].filter(
    (piece) => piece.length >= LEAST_LENGTH && !french.some((said) => said.includes(piece)),
  );
}

function plain(text: string): string {
  return text.replaceAll(/\s+/gu, ' ').trim();
}

/**
 * Pieces of our English messages that a page in French still shows or tells a screen reader. What
 * people wrote, and what the engine says of a count, is in no catalogue.
 */
export async function leftInEnglish(page: Page): Promise<readonly string[]> {
  known ??= englishPieces();
  const pieces = await known;
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
