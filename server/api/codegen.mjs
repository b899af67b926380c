// What the GraphQL contract (server/api/schema) is turned into. server/generate.mjs runs it.

/** Read alike by the server's and the web's types. */
const sharedTypes = {
  enumsAsTypes: true,
  useTypeImports: true,
  strictScalars: true,
  scalars: { Instant: 'string' },
  // A client may leave a nullable input out, or send null: the types say both.
  inputMaybeValue: 'T | null | undefined',
};

/** @satisfies {Partial<import('@graphql-codegen/cli').CodegenConfig>} */
const sharedSettings = {
  schema: 'server/api/schema/*.graphql',
  silent: true,
  importExtension: '.js',
  emitLegacyCommonJSImports: false,
};

const notice = {
  add: { content: '// Generated from server/api/schema by `npm run generate`. Do not edit.' },
};

/**
 * Resolver and input types for the server.
 *
 * @type {import('@graphql-codegen/cli').CodegenConfig}
 */
export const serverTypes = {
  ...sharedSettings,
  generates: {
    'server/api/generated/schema.ts': {
      plugins: [notice, 'typescript', 'typescript-resolvers'],
      config: sharedTypes,
    },
  },
};

/**
 * Typed documents for the web client: `graphql(…)` with the result and variables of each document.
 *
 * @type {import('@graphql-codegen/cli').CodegenConfig}
 */
export const webDocuments = {
  ...sharedSettings,
  documents: ['web/src/**/*.{ts,tsx}', '!web/src/graphql/generated/**'],
  ignoreNoDocuments: true,
  generates: {
    'web/src/graphql/generated/': {
      preset: 'client',
      presetConfig: { fragmentMasking: false },
      config: sharedTypes,
    },
  },
};
