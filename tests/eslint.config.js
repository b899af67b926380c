import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import lingui from 'eslint-plugin-lingui';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const pure =
  'server/core is pure: the same input has to give the same bytes on the server, on the command line and in the browser.';

/** What server/core may not use; that it imports nothing from outside is checked by depend.config.cjs too. */
const purity = {
  files: ['server/core/**/*.ts'],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            regex: '^[^.]',
            message: `${pure} It imports nothing from outside server/core, no package and no node: module.`,
          },
        ],
      },
    ],
    'no-restricted-globals': [
      'error',
      ...['process', 'globalThis', 'performance', 'crypto', 'fetch', 'setTimeout', 'Intl'].map(
        (name) => ({ name, message: `${pure} Hand the value in as an argument.` }),
      ),
      { name: 'console', message: `${pure} Return what is to be said; the caller says it.` },
    ],
    'no-restricted-properties': [
      'error',
      { object: 'Date', property: 'now', message: `${pure} Hand the instant in as an argument.` },
      {
        object: 'Math',
        property: 'random',
        message: `${pure} Use the seeded generator of server/core/math.`,
      },
      {
        property: 'localeCompare',
        message: `${pure} localeCompare sorts by the language of the machine; compare with < or sort without a comparer.`,
      },
      {
        property: 'toLocaleString',
        message: `${pure} toLocaleString writes by the language of the machine.`,
      },
    ],
    'no-restricted-syntax': [
      'error',
      {
        selector: "NewExpression[callee.name='Date'][arguments.length=0]",
        message: `${pure} Hand the instant in as an argument.`,
      },
    ],
  },
};

/** Everything that a reader may see is a message (`t`, `<Trans>`, `msg`); the rest is told by its type or its place. */
const inCatalogues = {
  files: ['web/src/**/*.{ts,tsx}'],
  ignores: ['web/src/graphql/generated/**'],
  plugins: { lingui },
  rules: {
    'lingui/no-unlocalized-strings': [
      'error',
      {
        useTsTypes: true,
        ignore: [
          // Without a letter, or written as codes, keys, class names and addresses are: no capital first, no space.
          '^[^A-Za-zÀ-ÿ]*$',
          '^[a-z0-9#./:_-][A-Za-z0-9#./:_?=-]*$',
          '^[A-Z][A-Z0-9_]*$',
          // Instants, values of CSS, keys of the browser's database.
          '^T[0-9:]*Z$',
          '^(var|url)\\([^)]*\\)$',
          '^\\[[A-Za-z+]+\\]',
          '^id, personId$',
          // Names of their own.
          '^\\W*Countersign$',
          '^(English|Français)$',
          // Paths.
          '^(\\.\\.?)?/',
          // Drawings: what a path is made of.
          '^[MHVCLZmhvclz\\d\\s.-]+$',
        ],
        ignoreNames: [
          'className',
          'key',
          'style',
          'viewBox',
          'd',
          'points',
          'transform',
          'href',
          'autoComplete',
          { regex: { pattern: '^(data|stroke|fill)' } },
          // Names of the contract's types, by which answers are asked for anew.
          'additionalTypenames',
        ],
        ignoreFunctions: [
          'Error',
          'isLanguage',
          '*.addEventListener',
          '*.querySelector',
          '*.startsWith',
          'graphql',
          'pathOf',
        ],
      },
    ],
    'lingui/t-call-in-function': 'error',
    'lingui/no-single-tag-to-translate': 'error',
    'lingui/no-single-variables-to-translate': 'error',
    'lingui/no-trans-inside-trans': 'error',
  },
};

export default defineConfig(
  {
    ignores: [
      'dist/',
      'coverage/',
      'server/api/generated/',
      'server/database/generated/',
      'web/src/graphql/generated/',
    ],
  },
  // A rule that is in the way is changed here, for everyone, with its reason.
  { linterOptions: { noInlineConfig: true } },
  js.configs.recommended,
  {
    files: ['**/*.{mjs,js,cjs}'],
    languageOptions: {
      globals: {
        console: 'readonly',
        module: 'writable',
        performance: 'readonly',
        process: 'readonly',
        URL: 'readonly',
      },
    },
  },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['web/*.config.ts', '*.config.ts'] },
        tsconfigRootDir: new URL('..', import.meta.url).pathname,
      },
    },
    rules: {
      // A Nest module is a class that only carries its decorator.
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      // Nest declares the types of its options as classes; they are given as plain objects.
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Numbers and truth values have one spelling; anything else in a sentence is a mistake.
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
    },
  },
  {
    // Published tables print more digits than a double holds; they are quoted as printed.
    files: ['tests/**/*.ts'],
    rules: { 'no-loss-of-precision': 'off' },
  },
  { ...reactHooks.configs.flat.recommended, files: ['web/**/*.{ts,tsx}'] },
  inCatalogues,
  purity,
);
