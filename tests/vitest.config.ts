import { lingui } from '@lingui/vite-plugin';
import { defineConfig } from 'vitest/config';
import { messageMacros } from '../web/message-macros.mjs';
import { findChromium } from './support/find-chromium.mjs';
import { LongestFirst } from './support/longest-first.js';

// graphql must resolve to one copy: Nest loads the CommonJS build, so tests must too.
const oneGraphql = { alias: [{ find: /^graphql$/, replacement: 'graphql/index.js' }] };

// Browser tests read CHROMIUM_PATH, and are skipped where it is empty.
const chromium = findChromium();

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  resolve: oneGraphql,
  // The pages' messages, as the web app is built (web/vite.config.ts).
  plugins: [
    messageMacros(),
    lingui({ configPath: new URL('../web/lingui.config.js', import.meta.url).pathname }),
  ],
  test: {
    // One test file to a core. Left to itself, Vitest keeps one core back, which is half of two.
    maxWorkers: '100%',
    sequence: { sequencer: LongestFirst },
    setupFiles: ['tests/support/fast-check-seed.ts', 'tests/support/in-english.ts'],
    env: chromium === undefined ? {} : { CHROMIUM_PATH: chromium },
    projects: [
      {
        extends: true,
        test: {
          name: 'server',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          // Only what hangs: random counts take long where other work goes on beside them.
          testTimeout: 240_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'web',
          environment: 'happy-dom',
          setupFiles: ['tests/support/browser-database.ts'],
          include: ['tests/**/*.test.tsx'],
          // Whole pages are drawn and clicked through, which takes a busy machine a while.
          testTimeout: 30_000,
        },
      },
    ],
  },
});
