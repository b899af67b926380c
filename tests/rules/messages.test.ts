import { getCatalogs } from '@lingui/cli/api';
import { getConfig } from '@lingui/conf';
import { compileMessage } from '@lingui/message-utils/compileMessage';
import { describe, expect, it } from 'vitest';

const config = getConfig({
  configPath: new URL('../../web/lingui.config.js', import.meta.url).pathname,
});
const catalogues = await getCatalogs(config);
const areaOf = (path: string): string => path.split('/').at(-3) ?? path;

/** The places for values and marked-up parts of a message, plural forms included. */
function placesOf(message: string): readonly string[] {
  const found = new Set<string>();
  const walk = (tokens: unknown): void => {
    if (!Array.isArray(tokens)) return;
    for (const token of tokens) {
      if (!Array.isArray(token)) continue;
      const [name, , forms] = token as readonly unknown[];
      found.add(String(name));
      if (typeof forms === 'object' && forms !== null) Object.values(forms).forEach(walk);
    }
  };
  walk(compileMessage(message));
  for (const [tag] of message.matchAll(/<\/?\d+\/?>/gu)) found.add(tag);
  return [...found].sort();
}

describe('message catalogues', () => {
  it.each(catalogues.map((catalogue) => [areaOf(catalogue.path), catalogue] as const))(
    '%s: every message of the pages is there in every language, and no other (npm run messages)',
    async (_area, catalogue) => {
      const used = Object.entries((await catalogue.collect()) ?? {});
      for (const locale of config.locales) {
        const there = await catalogue.read(locale);
        expect(Object.keys(there).sort(), locale).toEqual(used.map(([id]) => id).sort());
        for (const [id, { message = id }] of used) {
          const translation = there[id]?.translation ?? '';
          expect(translation, `${locale}: ${message}`).not.toBe('');
          expect(placesOf(translation), `${locale}: ${message}`).toEqual(placesOf(message));
          if (locale === config.sourceLocale) expect(translation).toBe(message);
        }
      }
    },
  );
});
