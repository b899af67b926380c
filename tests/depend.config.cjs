// Which part may depend on which (DEVELOPERS.md draws it). Run: npm run depend
const generated = '^server/(api|database)/generated/|^web/src/graphql/generated/';

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'core-is-pure',
      comment:
        'server/core gives the same bytes on the server, on the command line and in the browser: it depends on nothing but itself.',
      severity: 'error',
      from: { path: '^server/core/' },
      to: { pathNot: '^server/core/', couldNotResolve: false },
    },
    {
      name: 'web-knows-only-core',
      comment:
        'The web app reaches the server by GraphQL alone; what both share is in server/core. Anything else would end up in the browser.',
      severity: 'error',
      from: { path: '^web/' },
      to: {
        pathNot: '^(web/|server/core/|node_modules/)',
        dependencyTypesNot: ['npm', 'npm-dev'],
        couldNotResolve: false,
      },
    },
    {
      name: 'web-is-for-the-browser',
      comment: "A browser has none of Node's modules.",
      severity: 'error',
      from: { path: '^web/src/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'documents-by-page',
      comment:
        "The generator's map of documents holds those of all pages: graphql/document.ts takes its types alone.",
      severity: 'error',
      from: { path: '^web/', pathNot: '^web/src/graphql/(document\\.ts$|generated/)' },
      to: { path: '^web/src/graphql/generated/gql\\.ts$' },
    },
    {
      name: 'server-does-not-know-web',
      comment: 'The web app is served as built files.',
      severity: 'error',
      from: { path: '^server/' },
      to: { path: '^web/' },
    },
    {
      name: 'one-place-knows-the-database',
      comment:
        'Only server/database imports the Prisma client, its adapters and the SQLite driver; everything else goes through it. A build takes its lock from the driver, and knows nothing of the database.',
      severity: 'error',
      from: {
        path: '^(server|web)/',
        pathNot: '^server/(database/|toolchain/one-at-a-time\\.mjs$)',
      },
      to: { path: '^server/database/generated/|node_modules/(@prisma/|better-sqlite3/)' },
    },
    {
      name: 'exchange-reads-and-writes-core',
      comment:
        'A format is a reader or a writer of core values. It works without a server and without a database.',
      severity: 'error',
      from: { path: '^server/exchange/' },
      to: { path: '^server/', pathNot: '^server/(exchange|core)/' },
    },
    {
      name: 'no-cycles',
      comment: 'Two files that need each other are one file, or hide a third.',
      severity: 'error',
      from: { pathNot: generated },
      to: { circular: true },
    },
    {
      name: 'no-orphans',
      comment: 'Nothing uses this file.',
      severity: 'error',
      from: { orphan: true, pathNot: ['\\.d\\.ts$', generated, '\\.config\\.(js|cjs|mjs|ts)$'] },
      to: {},
    },
    {
      name: 'resolvable',
      comment: 'The file or package is not there.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-undeclared-packages',
      comment: 'A package that is used has to be named in package.json.',
      severity: 'error',
      from: { pathNot: generated },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'undetermined'] },
    },
    {
      name: 'no-development-packages-at-run-time',
      comment: 'The running server installs without development packages; types are no matter.',
      severity: 'error',
      from: { path: '^server/.*\\.ts$' },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      // Packages of types alone have no main file.
      mainFields: ['module', 'main', 'types', 'typings'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.cjs', '.json'],
    },
  },
};
