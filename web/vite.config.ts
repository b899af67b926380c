import { lingui } from '@lingui/vite-plugin';
import react from '@vitejs/plugin-react';
import { build, defineConfig, type Plugin } from 'vite';
import { injectManifest } from 'workbox-build';
import { firstFiles } from './first-files.mjs';
import { makeFirstScript } from './first-script.mjs';
import { messageMacros } from './message-macros.mjs';
import { packFiles } from './pack-files.mjs';

const folder = new URL('.', import.meta.url).pathname;
const outDir = `${folder}../dist/web`;

/**
 * Builds the service worker once the app's files are there, and tells it their names and hashes: the
 * worker fetches all of them at the first visit.
 */
function keepPages(): Plugin {
  return {
    name: 'keep-pages',
    apply: 'build',
    enforce: 'post',
    async closeBundle() {
      await makeFirstScript(outDir);
      await build({
        configFile: false,
        logLevel: 'warn',
        publicDir: false,
        define: { 'process.env.NODE_ENV': '"production"' },
        build: {
          outDir,
          emptyOutDir: false,
          sourcemap: false,
          rolldownOptions: {
            input: `${folder}keep-pages/keep-pages.ts`,
            output: { format: 'iife', entryFileNames: 'keep-pages.js' },
          },
        },
      });
      await injectManifest({
        swSrc: `${outDir}/keep-pages.js`,
        swDest: `${outDir}/keep-pages.js`,
        globDirectory: outDir,
        globPatterns: ['**/*.{html,js,css,svg,png,webmanifest}'],
        globIgnores: ['keep-pages.js'],
        // Names in assets/ carry a hash of the content already.
        dontCacheBustURLsMatching: /^assets\//u,
      });
      await packFiles(outDir);
    },
  };
}

/** Builds the pages into dist/web, which the server serves; in development, passes /graphql on to it. */
export default defineConfig(({ command }) => {
  // A build is for use, also where a test runner starts it and says NODE_ENV=test.
  if (command === 'build') process.env['NODE_ENV'] = 'production';
  return {
    root: folder,
    base: '/',
    // Written for browsers of today: a tenth less than what the package names as its main file.
    resolve: { alias: [{ find: /^dexie$/u, replacement: 'dexie/dist/modern/dexie.mjs' }] },
    plugins: [
      messageMacros(),
      lingui({
        configPath: `${folder}lingui.config.js`,
        failOnMissing: true,
        failOnCompileError: true,
      }),
      react(),
      keepPages(),
    ],
    build: {
      outDir: '../dist/web',
      emptyOutDir: true,
      sourcemap: true,
      modulePreload: false,
      rolldownOptions: {
        output: {
          codeSplitting: {
            groups: [{ debugName: 'first', name: firstFiles(`${folder}src/main.tsx`) }],
          },
        },
      },
    },
    server: { proxy: { '/graphql': 'http://127.0.0.1:4380' } },
  };
});
