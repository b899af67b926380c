import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Builds the pages into dist/web, which the server serves; in development, passes /graphql on to it. */
export default defineConfig(({ command }) => {
  // A build is for use, also where a test runner starts it and says NODE_ENV=test.
  if (command === 'build') process.env['NODE_ENV'] = 'production';
  return {
    root: new URL('.', import.meta.url).pathname,
    base: '/',
    plugins: [react()],
    build: { outDir: '../dist/web', emptyOutDir: true, sourcemap: true },
    server: { proxy: { '/graphql': 'http://127.0.0.1:4380' } },
  };
});
