// Makes the code that is derived from the contracts: GraphQL types (from server/api/schema and the
// documents in web/src) and the Prisma client (from prisma/schema.prisma).
//
//   npm run generate             makes what is out of date
//   npm run generate -- --check  changes nothing; fails if a committed generated file is out of date
//
// The GraphQL types are committed: a change of the contract then shows in its diff as the types that
// it changes, and an editor works right after a clone. tests/rules checks that they are current. The
// Prisma client is not committed: it is large and says nothing that prisma/schema.prisma does not.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { serverTypes, webDocuments } from './api/codegen.mjs';
import { filesBelow, root, runIfStale } from './toolchain/freshness.mjs';

const contract = [
  ...filesBelow('server/api/schema'),
  'server/api/codegen.mjs',
  'server/generate.mjs',
  'package-lock.json',
];

const webOutputs = 'web/src/graphql/generated';

/**
 * A file of web/src matters to the generator only if it holds a GraphQL document.
 *
 * @param {string} file
 */
function holdsDocument(file) {
  return (
    /\.tsx?$/.test(file) &&
    !file.startsWith(webOutputs) &&
    readFileSync(path.join(root, file), 'utf8').includes('graphql(')
  );
}

const graphqlSteps = [
  {
    name: 'GraphQL types of the server',
    config: serverTypes,
    inputs: contract,
    outputs: 'server/api/generated',
  },
  {
    name: 'GraphQL documents of the web client',
    config: webDocuments,
    inputs: [...contract, ...filesBelow('web/src').filter(holdsDocument)],
    outputs: webOutputs,
  },
];

/**
 * @typedef {(typeof graphqlSteps)[number]} GraphqlStep
 *
 * @param {GraphqlStep} step
 * @returns {Promise<Map<string, string>>} text by path relative to the checkout
 */
async function generatedTexts(step) {
  // Loaded only when there is something to make: it takes two seconds.
  const { generate: runCodegen } = await import('@graphql-codegen/cli');
  /** @type {{ filename: string, content: string }[]} */
  const files = await runCodegen({ ...step.config, cwd: root }, false);
  return new Map(files.map(({ filename, content }) => [filename, content]));
}

/** @param {GraphqlStep} step */
async function writeGraphqlTypes(step) {
  const texts = await generatedTexts(step);
  for (const file of filesBelow(step.outputs)) {
    if (!texts.has(file)) rmSync(path.join(root, file));
  }
  for (const [file, text] of texts) {
    const target = path.join(root, file);
    if (existsSync(target) && readFileSync(target, 'utf8') === text) continue;
    mkdirSync(path.dirname(target), { recursive: true });
    writeFileSync(target, text);
  }
}

/**
 * @param {GraphqlStep} step
 * @returns {Promise<string[]>} the committed files that differ from what the contract gives now
 */
async function staleFiles(step) {
  const texts = await generatedTexts(step);
  const committed = filesBelow(step.outputs);
  const leftOver = committed.filter((file) => !texts.has(file));
  const changed = [...texts].filter(
    ([file, text]) =>
      !committed.includes(file) || readFileSync(path.join(root, file), 'utf8') !== text,
  );
  return [...leftOver, ...changed.map(([file]) => file)];
}

function makePrismaClient() {
  const result = spawnSync(
    process.execPath,
    [path.join(root, 'node_modules/prisma/build/index.js'), 'generate'],
    {
      cwd: root,
      encoding: 'utf8',
      env: {
        ...process.env,
        // Generating needs no engine (it runs on bundled WebAssembly), yet Prisma would download one.
        // Any existing file named here keeps it from trying.
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        CHECKPOINT_DISABLE: '1',
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
      },
    },
  );
  if (result.status !== 0) {
    throw new Error(`prisma generate failed:\n${result.stdout}${result.stderr}`);
  }
}

const prismaStep = {
  name: 'Prisma client',
  inputs: [
    'prisma/schema.prisma',
    'server/generate.mjs',
    'package-lock.json',
    ...['prisma.config.ts', 'prisma.config.mjs'].filter((file) =>
      existsSync(path.join(root, file)),
    ),
  ],
  outputs: 'server/database/generated',
  make: makePrismaClient,
};

/**
 * Makes whatever is out of date. Every step is tried, so that one person's broken document does not
 * keep another from their types.
 *
 * @param {(line: string) => void} say is told what was made
 * @throws an Error that lists every step that failed
 */
export async function generate(say) {
  const steps = [
    ...graphqlSteps.map((step) => ({ ...step, make: () => writeGraphqlTypes(step) })),
    prismaStep,
  ];
  const failures = [];
  for (const step of steps) {
    try {
      if (await runIfStale(step)) say(`made: ${step.name} (${step.outputs})`);
    } catch (error) {
      failures.push(`${step.name}: ${error instanceof Error ? error.message : error}`);
    }
  }
  if (failures.length > 0) throw new Error(failures.join('\n'));
}

async function main() {
  if (process.argv.includes('--check')) {
    const stale = (await Promise.all(graphqlSteps.map(staleFiles))).flat();
    if (stale.length === 0) return;
    throw new Error(
      `These files are not what the contract gives; run \`npm run generate\` and commit them:\n  ${stale.join('\n  ')}`,
    );
  }
  await generate(console.log);
}

if (process.argv[1] === import.meta.filename) {
  main().catch((error) => {
    console.error(error.message);
    process.exitCode = 1;
  });
}
