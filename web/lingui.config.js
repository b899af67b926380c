import { formatter } from '@lingui/format-po';

/** The folders of web/src, each with a catalogue of its own for each language. */
const areas = ['ui', 'people', 'plans', 'tallies', 'reviews', 'seals'];

/**
 * Where the messages of the pages are, and which files they are taken from (`npm run messages`).
 *
 * @type {import('@lingui/conf').LinguiConfig}
 */
export default {
  rootDir: import.meta.dirname,
  locales: ['en', 'fr'],
  sourceLocale: 'en',
  catalogs: areas.map((area) => ({
    path: `<rootDir>/src/${area}/messages/{locale}`,
    include:
      area === 'ui'
        ? ['<rootDir>/src/ui', '<rootDir>/src/app.tsx', '<rootDir>/src/graphql/*.ts']
        : [`<rootDir>/src/${area}`],
  })),
  // Line numbers would change with every edit.
  format: formatter({ lineNumbers: false }),
};
