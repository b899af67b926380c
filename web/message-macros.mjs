import { transformAsync } from '@babel/core';
import macros from '@lingui/babel-plugin-lingui-macro';
import { getConfig } from '@lingui/conf';

const linguiConfig = getConfig({ configPath: `${import.meta.dirname}/lingui.config.js` });
const usesMacros = /from '@lingui\/(core|react)\/macro'/u;

/**
 * Turns the messages written in the pages (`t`…``, `<Trans>…</Trans>`) into calls that look them up
 * by a short id. A production build leaves their texts out: they come from the catalogues.
 *
 * @returns {import('vite').Plugin}
 */
export function messageMacros() {
  return {
    name: 'message-macros',
    enforce: 'pre',
    async transform(code, id) {
      if (!usesMacros.test(code) || id.includes('/node_modules/')) return null;
      const file = id.split('?')[0] ?? id;
      const made = await transformAsync(code, {
        filename: file,
        babelrc: false,
        configFile: false,
        sourceMaps: true,
        parserOpts: { plugins: file.endsWith('x') ? ['typescript', 'jsx'] : ['typescript'] },
        plugins: [
          [macros, { linguiConfig, stripMessageField: process.env['NODE_ENV'] === 'production' }],
        ],
      });
      return made?.code ? { code: made.code, map: JSON.stringify(made.map) } : null;
    },
  };
}
